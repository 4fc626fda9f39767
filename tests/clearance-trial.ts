import { type Clearance, clearances } from 'pan-core/clearance/index.js';
import type { Design, Obstacle } from 'pan-core/design/index.js';
import { floorProfile, outerSolids } from 'pan-core/pan/index.js';
import { type Mutable, stepDesign } from './sample-design.js';

export type P = [number, number, number];
export const DEG = Math.PI / 180;

export const still = { rock: 0, up: 0, down: 0, foreAft: 0 };
export const box = (name: string, min: P, max: P, plusMinus = 0): Mutable<Obstacle> => ({
  name,
  shape: { kind: 'box', min, max },
  clear: 15,
  plusMinus,
});

/** The L-shaped pan: sump x 0–300 and 200 deep, shallow to x 700 and 50 deep, 200 wide, 3 mm sheet; no bolts. */
export const rows = (change: (d: Mutable<Design>) => void): readonly Clearance[] => {
  const design = stepDesign((d) => {
    d.engine.railHoles = [];
    d.engine.carries = [];
    d.engine.topAboveRail = null;
    d.chassis.moves = { ...still };
    d.chassis.ground = null;
    d.chassis.obstacles = [];
    change(d);
  });
  return clearances(design, outerSolids(design, floorProfile(design)), []);
};
export const one = (list: readonly Clearance[], name: string): Clearance => {
  const found = list.find((c) => c.name === name);
  if (found === undefined)
    throw new Error(`no clearance called ${name}: ${list.map((c) => c.name).join(', ')}`);
  return found;
};
export const single = (min: P, max: P, change: (d: Mutable<Design>) => void = () => {}): Clearance =>
  one(
    rows((d) => {
      d.chassis.obstacles = [box('bar', min, max)];
      change(d);
    }),
    'bar',
  );
