import type { Design, Load } from 'pan-core/design/index.js';
import { insideSolid, outsideSolid, writeStl } from 'pan-core/drawing/index.js';
import type { Vec3 } from 'pan-core/numeric/index.js';
import {
  createBody,
  createMeasure,
  createOilSystem,
  createOriented,
  heightOf,
  measureCells,
  type OilAnswer,
  type OilSystem,
  orient,
  rampAnswer,
  restAnswer,
  solveLevel,
} from 'pan-core/oil/index.js';
import { buildPan, floorProfile, type PanModel } from 'pan-core/pan/index.js';
import { panSkin } from 'pan-core/weld/index.js';
import { unpaired } from './interop/stl-checker.js';
import { mirrored } from './mirror-design.js';
import { treeErrors } from './properties/tree-check.js';
import { treesOf } from './properties/tree-design.js';

/** What must hold for every pan: how far one is off, in `unit`; null where the law asks nothing of it. */
export interface Law {
  readonly name: string;
  readonly unit: string;
  readonly allowed: number;
  readonly off: (pan: Subject, next: () => number) => number | null;
}

/** A pan with what most laws ask of it, built once. */
export interface Subject {
  readonly design: Design;
  readonly model: PanModel;
  readonly system: OilSystem;
}

/** Throws a PanError where the shape is rightly refused. */
export const subjectOf = (design: Design): Subject => {
  const model = buildPan(design);
  return { design, model, system: createOilSystem(model) };
};

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);
const capacity = ({ volumes, shares }: PanModel): number => sum(volumes.map((v, i) => v * (shares[i] ?? 0)));
const atMouth = ({ pools }: OilAnswer): number => pools.find((pool) => pool.hasPickup)?.volume ?? 0;
const held = ({ pools }: OilAnswer): number => sum(pools.map(({ volume }) => volume));

const anyLoad = (next: () => number): Load => ({
  forward: (next() - 0.5) * 2.4,
  left: (next() - 0.5) * 2.4,
  grade: 0,
});

const anyUp = (next: () => number): Vec3 => {
  const [x, y] = [(next() - 0.5) * 3, (next() - 0.5) * 3];
  const size = Math.hypot(x, y, 1);
  return [x / size, y / size, 1 / size];
};

/** Moves every length of a pan along x; rail, crank and pickup go with it. */
const shifted = (design: Design, by: number): Design => {
  const pair = ([x, y]: readonly [number, number]): [number, number] => [x + by, y];
  return {
    ...design,
    engine: {
      ...design.engine,
      rail: { ...design.engine.rail, outline: design.engine.rail.outline.map(pair) },
    },
    pan: {
      ...design.pan,
      floor: design.pan.floor.map(pair),
      left: design.pan.left.map(pair),
      right: design.pan.right.map(pair),
      wings: design.pan.wings.map((w) => ({ ...w, rear: w.rear + by, front: w.front + by })),
      notches: design.pan.notches.map((n) =>
        n.kind === 'box'
          ? { ...n, min: [n.min[0] + by, n.min[1], n.min[2]], max: [n.max[0] + by, n.max[1], n.max[2]] }
          : n,
      ),
    },
    baffles: design.baffles.map((b) => {
      if (b.kind === 'lid')
        return {
          ...b,
          rear: b.rear + by,
          front: b.front + by,
          holes: b.holes.map((h) => ({ ...h, at: pair(h.at) })),
        };
      if (b.run === 'across') return { ...b, at: b.at + by };
      return { ...b, span: b.span === null ? null : [b.span[0] + by, b.span[1] + by] };
    }),
    pickup: { ...design.pickup, at: pair(design.pickup.at) },
  };
};

/** The cells of a pan turned about the vertical and then about x, as they would stand in another car. */
const turned = (
  model: PanModel,
  about: readonly [number, number],
): { readonly model: PanModel; readonly turn: (p: Vec3) => Vec3 } => {
  const [[c, s], [d, t]] = about.map((angle) => [Math.cos(angle), Math.sin(angle)]) as unknown as [P2, P2];
  const turn = ([x, y, z]: Vec3): Vec3 => {
    const [u, v] = [c * x - s * y, s * x + c * y];
    return [u, d * v - t * z, t * v + d * z];
  };
  const cells = model.cells.map((cell) => ({
    ...cell,
    faces: cell.faces.map((face) => ({ ...face, loop: face.loop.map(turn) })),
  }));
  return { model: { ...model, cells }, turn };
};
type P2 = readonly [number, number];

export const LAWS: readonly Law[] = [
  {
    name: 'oil is conserved at rest, held and settled, as a share of it',
    unit: '1',
    allowed: 1e-12,
    off: ({ system }, next) => {
      const volume = (2 + 5 * next()) * 1e6;
      const load = anyLoad(next);
      const answers = [
        restAnswer(system, volume),
        rampAnswer(system, volume, load, 'held'),
        rampAnswer(system, volume, load, 'settled'),
      ];
      return Math.max(...answers.map((answer) => Math.abs(held(answer) - volume) / volume));
    },
  },
  {
    name: 'more oil stands higher',
    unit: 'mm',
    allowed: 1e-9,
    off: ({ model }, next) => {
      const body = createBody(model);
      const cells = model.cells.map((_, i) => i);
      const oriented = orient(createOriented(body), anyUp(next));
      const out = createMeasure();
      const volumes = Array.from({ length: 6 }, () => capacity(model) * next()).sort((a, b) => a - b);
      const levels = volumes.map((volume) => solveLevel(oriented, cells, volume, out));
      return Math.max(0, ...levels.slice(1).map((level, i) => (levels[i] as number) - level));
    },
  },
  {
    name: 'a level and the volume under it answer each other, as a share of the pan',
    unit: '1',
    allowed: 1e-12,
    off: ({ model }, next) => {
      const cells = model.cells.map((_, i) => i);
      const oriented = orient(createOriented(createBody(model)), anyUp(next));
      const out = createMeasure();
      const volume = capacity(model) * (0.01 + 0.98 * next());
      const level = solveLevel(oriented, cells, volume, out);
      return Math.abs(measureCells(oriented, cells, level, out).volume - volume) / capacity(model);
    },
  },
  {
    name: 'a mirrored pan in the mirrored manoeuvre keeps the same oil at the mouth',
    unit: 'mm³',
    allowed: 1e-3,
    off: ({ design, system }, next) => {
      const load = anyLoad(next);
      const volume = (2 + 5 * next()) * 1e6;
      const keeps = (s: OilSystem, l: Load): number => atMouth(rampAnswer(s, volume, l, 'held'));
      const image = subjectOf(mirrored(design)).system;
      return Math.abs(keeps(system, load) - keeps(image, { ...load, left: -load.left }));
    },
  },
  {
    name: 'a pan moved along the car holds and keeps the same',
    unit: 'mm³',
    allowed: 1e-3,
    off: (here, next) => {
      // In eighths of a millimetre, so that moving itself rounds little.
      const there = subjectOf(shifted(here.design, Math.round(next() * 4000) / 8));
      const load = anyLoad(next);
      const volume = (2 + 5 * next()) * 1e6;
      const keeps = ({ system }: Subject): number => atMouth(rampAnswer(system, volume, load, 'held'));
      return Math.max(
        Math.abs(capacity(here.model) - capacity(there.model)),
        Math.abs(keeps(here) - keeps(there)),
      );
    },
  },
  {
    name: 'a pan turned with the gravity in it has the same level',
    unit: 'mm',
    allowed: 1e-9,
    off: ({ model }, next) => {
      const cells = model.cells.map((_, i) => i);
      const volume = capacity(model) * (0.05 + 0.9 * next());
      const up = anyUp(next);
      const { model: other, turn } = turned(model, [next() * 6, next() * 6]);
      const mark = model.cells[0]?.faces[0]?.loop[0] as Vec3;
      const heightOver = (m: PanModel, axis: Vec3, at: Vec3): number => {
        const oriented = orient(createOriented(createBody(m)), axis);
        return solveLevel(oriented, cells, volume, createMeasure()) - heightOf(oriented, at);
      };
      return Math.abs(heightOver(model, up, mark) - heightOver(other, turn(up), turn(mark)));
    },
  },
  {
    name: 'an engine tilted on level ground stands like a level one on the slope',
    unit: 'mm³',
    allowed: 1e-3,
    off: ({ design }, next) => {
      const tilt = (next() - 0.5) * 0.2;
      const volume = (2 + 5 * next()) * 1e6;
      const stands = (noseUp: number, grade: number): number => {
        const engine = { ...design.engine, tilt: { noseUp, leanLeft: 0 } };
        const { system } = subjectOf({ ...design, engine });
        return atMouth(rampAnswer(system, volume, { forward: 0, left: 0, grade }, 'held'));
      };
      return Math.abs(stands(tilt, 0) - stands(0, tilt));
    },
  },
  {
    name: 'every edge of the solids, inside and outside, is run once each way',
    unit: 'edges',
    allowed: 0,
    off: ({ design, model }) => {
      const skin = panSkin(model);
      const meshes = [insideSolid(skin), outsideSolid(skin, design.pan.sheet.thickness)];
      return sum(meshes.map((mesh) => unpaired(writeStl(mesh, 'pan')).length));
    },
  },
  {
    name: 'blanks close when bent up, measure true and mirror, in parts of what each may be off',
    unit: '1',
    allowed: 1,
    off: ({ design }) => {
      const plain = { ...design, baffles: [] };
      const trees = treesOf(plain);
      const errors = treeErrors({
        seed: 0,
        design: plain,
        profile: floorProfile(plain),
        trees,
        refused: null,
      });
      // mm, but for the area: a share of it.
      return Math.max(
        errors.closing / 1e-6,
        errors.runs / 1e-9,
        errors.widths / 1e-9,
        errors.area / 1e-12,
        errors.beyondReported / 1e-9,
        errors.mirror / 1e-6,
      );
    },
  },
];
