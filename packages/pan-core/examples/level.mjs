// Where five litres lie at rest and under braking, and whether the mouth stays covered.
import { buildPan, createOilSystem, levelReport, readDesign } from 'pan-core';
import { design as keys } from './design.mjs';

const { design } = readDesign(keys);
const system = createOilSystem(buildPan(design));
const litres = 5e6; // mm³

for (const braking of [0, 0.5, 1]) {
  const { held } = levelReport(design, system, litres, { forward: -braking, left: 0, grade: 0 });
  const { submergence_mm, covered } = held.pickup;
  console.log(
    `${braking} g: mouth ${covered ? 'covered' : 'bare'}, ${Math.round(submergence_mm)} mm under the oil`,
  );
}
