import type { Design, Flange } from 'pan-core/design/index.js';
import { type Path, pathArea, pathBox } from 'pan-core/geometry/index.js';
import { floorProfile } from 'pan-core/pan/index.js';
import {
  flangeParts,
  flangePieces,
  type Part,
  type SheetFinding,
  sheetFindings,
} from 'pan-core/sheet/index.js';
import { type Mutable, sampleDesign } from './sample-design.js';

// The sample's rail is 700 x 250 with bolts at y ±114, its pan 190 wide between x 32 and 655 in 3 mm sheet.
export type Change = (d: Mutable<Design>) => void;

/** The sample with these of its flange changed. */
export const own =
  (keys: Partial<Flange>): Change =>
  (d) => {
    Object.assign(d.pan.flange, keys);
  };

export const made = (change?: Change) => {
  const design = sampleDesign(change);
  const profile = floorProfile(design);
  return { design, profile, parts: flangeParts(design, profile) };
};

export const part = (parts: readonly Part[], name: string): Part => {
  const found = parts.find((p) => p.name === name);
  if (found === undefined) throw new Error(`No part ${name}`);
  return found;
};

export const finding = (id: string, change: Change): SheetFinding => {
  const { design, profile, parts } = made(change);
  const found = sheetFindings(design, profile, parts).find((f) => f.id === id);
  if (found === undefined) throw new Error(`No finding ${id}`);
  return found;
};

export const box = (path: Path) => {
  const { min, max } = pathBox(path);
  return [min[0], min[1], max[0], max[1]];
};

export const WHOLE = made();
export const [REAR, , FRONT, LEFT] = box(pathOf(WHOLE)) as [number, number, number, number];

export function pathOf({ design, profile }: typeof WHOLE): Path {
  return flangePieces(design, profile)[0]!.outline;
}

export const STRIP = LEFT - 95 - 3.2;
export const area = (pieces: readonly { outline: Path; openings: readonly Path[] }[]): number =>
  pieces.reduce((sum, p) => sum + pathArea(p.outline) + p.openings.reduce((s, o) => s + pathArea(o), 0), 0);
