import { partsInPlace } from 'pan-core/drawing/index.js';
import { buildPan, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts } from 'pan-core/sheet/index.js';
import { panSeams, panSkin } from 'pan-core/weld/index.js';
import { describe, expect, it } from 'vitest';
import { exampleText, read } from '../design-text.js';
import { sampleDesign } from '../sample-design.js';

/** A pan with a wing, whose notch cuts a box out of the step's side. */
const notched = sampleDesign((d) => {
  d.pan.notches = [{ kind: 'box', name: 'link notch', min: [180, 60, -200], max: [260, 200, -120] }];
  d.pan.wings = [];
  d.baffles = [];
});
const overStep = sampleDesign((d) => {
  const [wing] = d.pan.wings;
  if (wing !== undefined) Object.assign(wing, { front: 420, topDown: { rear: 30, front: 30 } });
  d.baffles = [];
});

describe('a part has one name: on the cut list, in the weld order and as a solid in its place', async () => {
  const designs = [
    ['two wings', (await read(exampleText('two-wings'))).design],
    ['demo', (await read(exampleText('demo'))).design],
    ['a notch', notched],
    ['a wing whose floor folds', overStep],
  ] as const;
  it.each(designs)('%s', async (_, design) => {
    const model = buildPan(design);
    const skin = panSkin(model);
    const cut = cutParts(design, model.profile, platesOf(model), panelsOf(model)).map((part) => part.name);
    const standing = (await partsInPlace(model, skin)).map(({ name }) => name);
    expect(standing.filter((name) => !cut.includes(name))).toEqual([]);
    const others = ['pan', 'belly and sides', 'drain bung'];
    const welded = panSeams(model, skin).flatMap(({ between }) => [...between]);
    expect(welded.filter((name) => !cut.includes(name) && !others.includes(name))).toEqual([]);
  });
});
