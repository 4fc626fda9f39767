import { checkDesign } from 'pan-core/check/index.js';
import type { Design, Lid } from 'pan-core/design/index.js';
import { buildPan, floorProfile, panelsOf, platesOf } from 'pan-core/pan/index.js';
import { cutParts, type Part, sheetFindings } from 'pan-core/sheet/index.js';
import { type Mutable, sampleDesign } from './sample-design.js';

export const deg = Math.PI / 180;

export const tray = (of: Partial<Lid> = {}): Lid => ({
  kind: 'lid',
  tray: true,
  name: 'tray',
  down: 36,
  rear: 50,
  front: 610,
  span: [-80, 60],
  fixed: 'bolted',
  thickness: 2,
  holes: [],
  ...of,
});

export const withLids = (...lids: readonly Lid[]): Design =>
  sampleDesign((d) => {
    d.baffles = structuredClone(lids) as Mutable<Lid>[];
  });

export const partsOf = (design: Design): readonly Part[] => {
  const model = buildPan(design);
  return cutParts(design, model.profile, platesOf(model), panelsOf(model));
};

export const partNamed = (design: Design, name: string): Part => {
  const found = partsOf(design).find((part) => part.name === name);
  if (found === undefined) throw new Error(`no part ${name}`);
  return found;
};

export const finding = (design: Design, id: string) => {
  const found = sheetFindings(design, floorProfile(design), partsOf(design)).find((f) => f.id === id);
  if (found === undefined) throw new Error(`no finding ${id}`);
  return found;
};

export const check = (design: Design, id: string) => {
  const read = { design, assumed: [], unknown: [], rail: null };
  const found = checkDesign(read as unknown as Parameters<typeof checkDesign>[0]).checks.find(
    (c) => c.id === id,
  );
  if (found === undefined) throw new Error(`no check ${id}`);
  return found;
};
