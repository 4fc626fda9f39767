import { measureCells } from '../level.js';
import { mouthCover } from './mouth-draw.js';
import type { NamedRoom } from './named-room.js';
import { POOL_SIZE, poolAt, type SurgePool, type SurgeScene, TRANSIT } from './surge-scene.js';

/** Columns over time; the arrays are as long as each other. mm, mm³, s, radians. */
export interface SurgeSeries {
  readonly time: Float64Array;
  /** Load on the car, g. */
  readonly forward: Float64Array;
  readonly left: Float64Array;
  /** Least depth of the mouth's rim below its own pool's surface; negative when bared. */
  readonly submergence: Float64Array;
  /** Oil in the bay that holds the mouth. */
  readonly mouthBay: Float64Array;
  /** Angle by which that bay's surface stands higher toward the front, and toward the left, off the rail. */
  readonly riseFront: Float64Array;
  readonly riseLeft: Float64Array;
  /** Oil on its way through the engine. */
  readonly inEngine: Float64Array;
  readonly rooms: readonly { readonly name: string; readonly volume: Float64Array }[];
}

export interface SeriesRecorder {
  /** Writes the next row from the levels last set for t and y. */
  readonly add: (t: number, y: Float64Array) => void;
  /** The rows written so far. */
  readonly series: () => SurgeSeries;
}

export const createRecorder = (
  scene: SurgeScene,
  rooms: readonly NamedRoom[],
  most: number,
): SeriesRecorder => {
  const column = (): Float64Array => new Float64Array(most);
  const [time, forward, left, submergence] = [column(), column(), column(), column()];
  const [mouthBay, riseFront, riseLeft, inEngine] = [column(), column(), column(), column()];
  const roomOf = new Int32Array(scene.net.system.body.cellCount);
  rooms.forEach(({ cells }, r) => {
    for (const c of cells) roomOf[c] = r;
  });
  const volumes = rooms.map(column);
  let rows = 0;
  const one = [0];
  const shareOut = (pool: SurgePool): void => {
    if (pool.dry) return;
    for (let k = 0; k < pool.cells.length; k++) {
      one[0] = pool.cells[k] as number;
      const into = volumes[roomOf[one[0]] as number] as Float64Array;
      const v = measureCells(scene.oriented, one, pool.level, scene.measure).volume;
      into[rows] = (into[rows] as number) + v;
    }
  };
  return {
    add: (t, y) => {
      if (rows >= most) return;
      const mouth = poolAt(scene, scene.net.system.model.mouth.cell);
      const pool = scene.pools[mouth] as SurgePool;
      const load = scene.path.at(t);
      const [x = 0, side = 0, z = 1] = pool.up;
      time[rows] = t;
      forward[rows] = load.forward;
      left[rows] = load.left;
      submergence[rows] = mouthCover(scene);
      mouthBay[rows] = y[scene.firstPool + POOL_SIZE * mouth] as number;
      riseFront[rows] = Math.atan2(-x, z);
      riseLeft[rows] = Math.atan2(-side, z);
      let sum = 0;
      for (let s = 0; s < TRANSIT; s++) sum += y[s] as number;
      inEngine[rows] = sum;
      for (const p of scene.pools) shareOut(p);
      rows++;
    },
    series: () => {
      const cut = (a: Float64Array): Float64Array => (rows === most ? a : a.slice(0, rows));
      return {
        time: cut(time),
        forward: cut(forward),
        left: cut(left),
        submergence: cut(submergence),
        mouthBay: cut(mouthBay),
        riseFront: cut(riseFront),
        riseLeft: cut(riseLeft),
        inEngine: cut(inEngine),
        rooms: rooms.map(({ name }, r) => ({ name, volume: cut(volumes[r] as Float64Array) })),
      };
    },
  };
};
