// The flat parts of a pan, and one of them as the text of a DXF file in mm.
import { barePartDxf, buildPan, cutParts, panelsOf, platesOf, readDesign } from 'pan-core';
import { design as keys } from './design.mjs';

const { design } = readDesign(keys);
const model = buildPan(design);
const parts = cutParts(design, model.profile, platesOf(model), panelsOf(model));
const words = { title: design.title, warning: null, sentences: ['Prove a mock-up on block and car first.'] };
for (const { name, quantity, material } of parts) console.log(`${quantity} × ${name}, ${material}`);
console.log(`${barePartDxf(parts[0], words).split('\n').length} lines of DXF for ${parts[0].name}`);
