import { movePath } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';

/** "1:2", or "2:1". */
export const scaleWords = (scale: number): string =>
  scale >= 1 ? `${Number(scale.toFixed(2))}:1` : `1:${Number((1 / scale).toFixed(1))}`;

/** A path made smaller about 0, 0 and then moved. */
export const scaled = (path: MapPath, scale: number, shift: Vec2): MapPath =>
  movePath(
    { shift },
    path.map((s) => {
      const [from, to] = [times(s.from, scale), times(s.to, scale)];
      return s.kind === 'line'
        ? { kind: 'line', from, to }
        : { ...s, from, to, centre: times(s.centre, scale), radius: s.radius * scale };
    }),
  );

type MapPath = Parameters<typeof movePath>[1];

const times = (p: Vec2, k: number): Vec2 => [p[0] * k, p[1] * k];
