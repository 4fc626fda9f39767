import { clearances } from 'pan-core/clearance/index.js';
import type { Design, Scan } from 'pan-core/design/index.js';
import { tiltedToLevel, triangleSoup, turnsAboutAxes } from 'pan-core/geometry/index.js';
import { floorProfile, type OuterSolid, outerSolids } from 'pan-core/pan/index.js';
import { type Dice, diceFrom } from './dice.js';
import { randomPan } from './random-design.js';
import { type Corners, fan, insideOf, type P, skinGap, skinOf } from './skin-gap.js';

const DEG = Math.PI / 180;
/** Movements of each random pan before the next is drawn. */
export const EACH = 25;
/** Triangles of a scan, and how near to the pan at rest they may lie, mm. */
const TRIANGLES = 60;
const NEAREST = 6;
const FARTHEST = 90;

type Rows = readonly [P, P, P];
const turned = (r: Rows, [x, y, z]: P): P =>
  r.map((row) => row[0] * x + row[1] * y + row[2] * z) as unknown as P;
const turnedBack = (r: Rows, [x, y, z]: P): P =>
  [0, 1, 2].map((k) => r[0][k]! * x + r[1][k]! * y + r[2][k]! * z) as unknown as P;

/** What a thousand random movements of random pans beside random scans found. */
export interface ScanTally {
  readonly movements: number;
  /** Of them, those where pan and scan were apart. */
  readonly apart: number;
  /** Scans that were apart through all of the movement, by the tool's own word. */
  readonly clear: number;
  /** Most that the tool's worst was over the least over all pairs of triangles at one place, mm; ≤ 0 is its promise. */
  readonly over: number;
  /** The same between its distance at rest and the least over all pairs, either way. */
  readonly restOff: number;
  /** Most that the least found by looking densely was over the tool's worst, where it found them apart, mm. */
  readonly slack: number;
  readonly faults: readonly string[];
}

/** Never larger than the true distance by more than this, mm. */
const PROMISE = 1e-6;

/**
 * Random pans beside random scans in any unit and place, moved at random: the tool's distance and its worst over the
 * movement beside the least over every pair of triangles.
 *
 * @param dense Looks about the best of the random movements of each pan, to see how near the worst is reached.
 */
export const tryScans = (
  seed: number,
  movements: number,
  dense: number,
  done: (movements: number) => void = () => {},
): ScanTally => {
  const dice = diceFrom(seed);
  const faults: string[] = [];
  let [apart, clear, over, restOff, slack, made] = [0, 0, Number.NEGATIVE_INFINITY, 0, 0, 0];
  for (let i = 0; made < movements; i++) {
    const scene = sceneOf(dice, seed + i);
    const { moves, rest, worst } = scene;
    const what = `seed ${seed}, pan ${i}`;
    const still = scene.gapAt(0, 0, 0);
    if (still > 0) restOff = Math.max(restOff, Math.abs(rest - still));
    if (still > 0 ? Math.abs(rest - still) > PROMISE : rest > PROMISE)
      faults.push(`${what}: ${rest} at rest, ${still} over all pairs`);
    if (worst > 0) clear++;
    let least = { gap: still, angle: 0, dx: 0, dz: 0 };
    const look = (angle: number, dx: number, dz: number): number => {
      const gap = scene.gapAt(angle, dx, dz);
      over = Math.max(over, worst - gap);
      if (worst > gap + PROMISE) faults.push(`${what}: worst ${worst}, yet ${gap} at ${[angle, dx, dz]}`);
      if (gap < least.gap) least = { gap, angle, dx, dz };
      return gap;
    };
    for (let k = 0; k < EACH && made < movements; k++, made++) {
      const end = (low: number, high: number): number =>
        k % 2 === 0 ? dice.between(low, high) : dice.happens(0.5) ? low : high;
      if (
        look(end(-moves.rock, moves.rock), end(-moves.foreAft, moves.foreAft), end(-moves.down, moves.up)) > 0
      )
        apart++;
    }
    if (dense > 0)
      for (const angle of [-moves.rock, 0, moves.rock])
        for (const dx of [-moves.foreAft, moves.foreAft])
          for (const dz of [-moves.down, moves.up]) look(angle, dx, dz);
    // Smaller and smaller steps about the least so far, kept inside the movement.
    for (let k = 0, step = 0.5; k < dense; k++, step *= 0.93) {
      const near = (at: number, low: number, high: number): number =>
        Math.max(low, Math.min(high, at + step * (high - low) * dice.between(-1, 1)));
      look(
        near(least.angle, -moves.rock, moves.rock),
        near(least.dx, -moves.foreAft, moves.foreAft),
        near(least.dz, -moves.down, moves.up),
      );
    }
    if (worst > 0 && dense > 0) slack = Math.max(slack, least.gap - worst);
    done(made);
  }
  return { movements: made, apart, clear, over, restOff, slack, faults };
};

const sceneOf = (dice: Dice, seed: number) => {
  const { design } = randomPan(seed);
  const moves = {
    rock: dice.between(0.5, 4) * DEG,
    up: dice.between(0, 8),
    down: dice.between(0, 8),
    foreAft: dice.between(0, 8),
  };
  const tilt = { noseUp: dice.between(-5, 5) * DEG, leanLeft: dice.between(-5, 5) * DEG };
  const level = tiltedToLevel(tilt.noseUp, tilt.leanLeft);
  const bare: Design = {
    ...design,
    engine: { ...design.engine, railHoles: [], carries: [], topAboveRail: null, tilt },
    chassis: { ...design.chassis, axes: 'car', moves, obstacles: [] },
  };
  const solids = outerSolids(bare, floorProfile(bare));
  const resting = solids.map((s) => ({ ...s, vertices: s.vertices.map((p) => turned(level, p)) }));
  const { scan, placed } = scanBeside(dice, resting);
  const row = clearances(
    {
      ...bare,
      chassis: { ...bare.chassis, obstacles: [{ name: 'bay', shape: scan, clear: 10, plusMinus: 0 }] },
    },
    solids,
    [],
  ).find(({ name }) => name === 'bay');
  const height = design.engine.crank?.centreAboveRail ?? 0;
  const skin = skinOf(placed);
  return {
    moves,
    rest: row?.distance ?? Number.NaN,
    worst: row?.worst ?? Number.NaN,
    /** The engine rocked about its crank, then set level as the car has it, then shifted. */
    gapAt: (angle: number, dx: number, dz: number): number => {
      const [c, s] = [Math.cos(angle), Math.sin(angle)];
      const moved = solids.map((solid) => ({
        ...solid,
        vertices: solid.vertices.map(([x, y, z]): P => {
          const h = z - height;
          const p = turned(level, [x, c * y - s * h, s * y + c * h + height]);
          return [p[0] + dx, p[1], p[2] + dz];
        }),
      }));
      const inside = moved.map(insideOf);
      return placed.some(([p]) => inside.some((holds) => holds(p))) ? 0 : skinGap(skinFrom(moved), skin);
    },
  };
};

type Moved = Pick<OuterSolid, 'vertices' | 'faces'>;

const skinFrom = (solids: readonly Moved[]) =>
  skinOf(solids.flatMap((s) => s.faces.flatMap((face) => fan(face.map((k) => s.vertices[k] as P)))));

/** Triangles of every shape near a pan at rest, as a file in its own unit and axes holds them. */
const scanBeside = (dice: Dice, solids: readonly Moved[]) => {
  const pan = skinFrom(solids);
  const inside = solids.map(insideOf);
  const points = solids.flatMap(({ vertices }) => vertices as readonly P[]);
  const span = (k: 0 | 1 | 2) => [
    Math.min(...points.map((p) => p[k])) - FARTHEST,
    Math.max(...points.map((p) => p[k])) + FARTHEST,
  ];
  const [x, y, z] = [span(0), span(1), span(2)] as [number[], number[], number[]];
  const within = ([low, high]: number[]): number => dice.between(low!, high!);
  const size = [1, 25.4, 1000][Math.floor(dice.between(0, 3))]!;
  const name = size === 1 ? 'mm' : size === 1000 ? 'm' : 'in';
  const rotation = turnsAboutAxes(dice.between(-3, 3), dice.between(-1, 1), dice.between(-3, 3));
  const origin: P = [dice.between(-500, 500), dice.between(-500, 500), dice.between(-500, 500)];
  const file: number[] = [];
  const placed: Corners[] = [];
  while (placed.length < TRIANGLES) {
    const middle: P = [within(x), within(y), within([z[0]!, Math.min(z[1]!, -20)])];
    // Points and needles among them, and flipped ones, as corners come in any order.
    const long = dice.happens(0.1) ? 0 : dice.between(1, 60);
    const needle = dice.happens(0.1);
    const corner = (): P => middle.map((v) => v + dice.between(-long, long)) as unknown as P;
    const [a, b] = [corner(), corner()];
    const inFile = [a, b, needle ? b : corner()].map((p) =>
      turnedBack(rotation, p.map((v, k) => v - origin[k]!) as unknown as P).map((v) => Math.fround(v / size)),
    );
    const back = inFile.map((p) =>
      turned(rotation, p.map((v) => v * size) as unknown as P).map((v, k) => v + origin[k]!),
    ) as unknown as Corners;
    const gap = skinGap(pan, skinOf([back]));
    if (gap < NEAREST || gap > FARTHEST || inside.some((holds) => holds(back[0]))) continue;
    file.push(...inFile.flat());
    placed.push(back);
  }
  const scan: Scan = {
    kind: 'scan',
    file: 'soup.stl',
    unit: { name, size },
    rotation,
    origin,
    residuals: null,
    soup: triangleSoup(Float32Array.from(file)),
  };
  return { scan, placed };
};
