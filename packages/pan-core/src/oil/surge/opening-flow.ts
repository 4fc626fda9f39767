import { laminarShare, rehbock } from './discharge.js';
import type { FlowOpening } from './network.js';
import { areaBelow, headIntegral } from './opening-head.js';
import { practice } from './practice.js';
import type { SurgePool, SurgeScene } from './surge-scene.js';

/** Heads below this run in proportion to their difference, mm. */
const SMOOTH = 0.2;
/** Levels either side of an opening even out no faster than this, 1/s. */
const FASTEST = 50;
/** A puddle runs off no faster than this, 1/s; of more oil than `PUDDLE` mm³ any flow there is can leave. */
const RUN_OFF = 50;
const PUDDLE = 5e3;
/** A free surface counts as at least this share of its pool's mean section. */
const LEAST_SURFACE = 0.05;

const ORIFICE = practice('orifice');

/** What the last call found beside the flow. */
export interface FlowNote {
  /** Head that drives oil from `from` to `to` through the opening, mm; negative the other way. */
  drive: number;
}

/**
 * Flow through an opening between two pools, mm³/s, positive from → to, its doors taken as wide open:
 * Q = C_d·√(2g_e)·∫√head dA, free above the lower level and drowned below it (`headIntegral`).
 * Where the two surfaces have different directions, the opening is measured along the mean of them and each
 * level is carried over at its centre.
 */
export const openingFlow = (
  scene: SurgeScene,
  opening: FlowOpening,
  a: SurgePool,
  b: SurgePool,
  note: FlowNote,
): number => {
  note.drive = 0;
  if (a.dry && b.dry) return 0;
  const { corners, centre, heights } = opening;
  if (standsClear(opening, a) && standsClear(opening, b)) return 0;
  const p = a.dry ? b.up : a.up;
  const q = b.dry ? a.up : b.up;
  let x = (p[0] as number) + (q[0] as number);
  let y = (p[1] as number) + (q[1] as number);
  let z = (p[2] as number) + (q[2] as number);
  const length = Math.sqrt(x * x + y * y + z * z);
  x /= length;
  y /= length;
  z /= length;
  let sill = Number.POSITIVE_INFINITY;
  for (let i = 0, k = 0; i < heights.length; i++, k += 3) {
    const h = (corners[k] as number) * x + (corners[k + 1] as number) * y + (corners[k + 2] as number) * z;
    heights[i] = h;
    if (h < sill) sill = h;
  }
  // What a height along either direction gains when it is carried over to the mean one at the centre.
  const middle = centre[0] * x + centre[1] * y + centre[2] * z;
  const shiftA =
    middle - centre[0] * (p[0] as number) - centre[1] * (p[1] as number) - centre[2] * (p[2] as number);
  const shiftB =
    middle - centre[0] * (q[0] as number) - centre[1] * (q[1] as number) - centre[2] * (q[2] as number);
  const hereA = a.level + shiftA;
  const hereB = b.level + shiftB;
  const forth = hereA > hereB;
  const up = forth ? hereA : hereB;
  const down = forth ? hereB : hereA;
  if (up <= sill) return 0;
  note.drive = (forth ? 1 : -1) * (up - Math.max(down, sill));
  const source = forth ? a : b;
  const { discharge, viscosity } = scene.settings;
  const sharp =
    discharge ??
    (opening.open
      ? rehbock((up - sill) / Math.max(1e-6, sill - source.low - (forth ? shiftA : shiftB)))
      : ORIFICE);
  const speed = Math.sqrt(2 * scene.gravity);
  const steep = (sharp * opening.area * speed) / (FASTEST * surfaceOf(a, b));
  const integral = headIntegral(opening, heights, up, down, Math.max(SMOOTH, steep * steep));
  let flow = sharp * speed * integral;
  if (discharge === null && integral > 0) {
    const wet = areaBelow(opening, heights, up);
    const wide = 2 * (up - sill);
    flow *= laminarShare(
      sharp,
      opening.laminar,
      (speed * integral) / wet,
      Math.min(opening.diameter, wide),
      viscosity,
    );
  }
  const size = source.volume / PUDDLE;
  const most = RUN_OFF * source.volume * (1 + size * size);
  flow *= most / (most + flow);
  return forth ? flow : -flow;
};

/** Whether a pool's surface lies below all of an opening. */
const standsClear = ({ centre, reach }: FlowOpening, { level, up }: SurgePool): boolean =>
  level <
  centre[0] * (up[0] as number) + centre[1] * (up[1] as number) + centre[2] * (up[2] as number) - reach;

/** The lesser free surface of the two, dry ones left out, mm². */
const surfaceOf = (a: SurgePool, b: SurgePool): number => {
  const one = a.dry ? Number.POSITIVE_INFINITY : Math.max(a.area, LEAST_SURFACE * a.mean);
  const other = b.dry ? Number.POSITIVE_INFINITY : Math.max(b.area, LEAST_SURFACE * b.mean);
  return Math.min(one, other);
};
