import { PanError, type Problem } from '../../errors/index.js';
import {
  circlePath,
  isClosed,
  type Path,
  pathBox,
  pathCrossings,
  pointInPath,
  segmentLength,
  selfCrossings,
} from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { Part } from '../../sheet/index.js';
import { oneLine } from '../one-line.js';

interface Loop {
  readonly what: string;
  readonly path: Path;
}

/**
 * Proves that a part can be cut: every loop closed and free of itself, none touching another, the inner
 * ones inside the outline and side by side.
 *
 * @throws PanError `sheet-cut` with every fault found
 */
export const requireCuttable = (part: Part): void => {
  const outline: Loop = { what: 'outline', path: part.outline };
  const inner = [
    ...part.openings.map(
      (path, i): Loop => ({ what: part.openings.length === 1 ? 'opening' : `opening ${i + 1}`, path }),
    ),
    ...part.holes.map((hole, i): Loop => {
      const at = `${hole.at[0].toFixed(1)}, ${hole.at[1].toFixed(1)}`;
      return {
        what: `hole ${i + 1} (${oneLine(hole.what, 60)}) at ${at}`,
        path: circlePath(hole.at, hole.diameter / 2),
      };
    }),
  ];
  const broken = [outline, ...inner].flatMap(ownFaults);
  // Loops that are broken themselves say nothing sure about their neighbours.
  const faults = broken.length > 0 ? broken : pairFaults(outline, inner);
  if (faults.length === 0) return;
  throw new PanError(faults.map((fault) => problem(part, fault)));
};

const problem = (part: Part, fault: string): Problem => ({
  code: 'sheet-cut',
  path: [],
  message: `The part "${oneLine(part.name, 60)}" cannot be cut: ${fault}.`,
  advice: 'Move the hole, the wall or the edge that it runs into, or make it smaller.',
});

const ownFaults = ({ what, path }: Loop): readonly string[] => {
  if (!path.every((s) => [...s.from, ...s.to].every(Number.isFinite)))
    return [`its ${what} has a place that is no number`];
  if (!isClosed(path)) return [`its ${what} does not close`];
  // A piece without length joins its neighbours at one point and is not drawn.
  const drawn = path.filter((s) => segmentLength(s) > 1e-9);
  const [crossing] = selfCrossings(drawn);
  if (crossing === undefined) return [];
  return [`its ${what} runs into itself near ${place(drawn[crossing.first]?.from)}`];
};

const pairFaults = (outline: Loop, inner: readonly Loop[]): readonly string[] => {
  const faults: string[] = [];
  inner.forEach((loop, i) => {
    if (meet(outline, loop)) faults.push(`its ${loop.what} breaks through the outline`);
    else if (pointInPath(outline.path, start(loop)) !== 'inside')
      faults.push(`its ${loop.what} lies outside the outline`);
    for (const other of inner.slice(i + 1)) {
      if (meet(loop, other)) faults.push(`its ${other.what} runs into its ${loop.what}`);
      else if (within(loop, other) || within(other, loop))
        faults.push(`its ${other.what} and its ${loop.what} lie in each other`);
    }
  });
  return faults;
};

const start = (loop: Loop): Vec2 => loop.path[0]?.from ?? [Number.NaN, Number.NaN];

const within = (outer: Loop, inner: Loop): boolean =>
  boxesMeet(outer, inner) && pointInPath(outer.path, start(inner)) !== 'outside';

const meet = (a: Loop, b: Loop): boolean => boxesMeet(a, b) && pathCrossings(a.path, b.path).length > 0;

const boxesMeet = (a: Loop, b: Loop): boolean => {
  const [p, q] = [pathBox(a.path), pathBox(b.path)];
  return p.min[0] <= q.max[0] && q.min[0] <= p.max[0] && p.min[1] <= q.max[1] && q.min[1] <= p.max[1];
};

const place = (p: Vec2 | undefined): string =>
  p === undefined ? 'its start' : `${p[0].toFixed(1)}, ${p[1].toFixed(1)}`;
