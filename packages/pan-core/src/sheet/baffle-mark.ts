import type { Baffle } from '../design/index.js';
import { distance2, framePoint, lineSegment } from '../geometry/index.js';
import { subtract3, type Vec2 } from '../numeric/index.js';
import type { Plate } from '../pan/index.js';
import { type Facet, facetFlat, facetLocal } from './cutter.js';
import type { Mark } from './part.js';

/** An edge this near a face touches it, mm. */
const TOUCH = 0.01;

/** Lines where baffles stand against a part, in its blank; a wall's foot is marked on the floor below it. */
export const baffleMarks = (facets: readonly Facet[], plates: readonly Plate[]): readonly Mark[] =>
  onceEach(marksOnFacets(facets, plates));

/** Faces of one plane side by side, such as a floor and a wing's floor on one blank, carry the same line. */
const onceEach = (marks: readonly Mark[]): readonly Mark[] =>
  marks.filter((mark, i) => !marks.slice(0, i).some((other) => isSameLine(mark, other)));

const isSameLine = (a: Mark, b: Mark): boolean =>
  a.what === b.what &&
  distance2(a.path[0]!.from, b.path[0]!.from) < TOUCH &&
  distance2(a.path[0]!.to, b.path[0]!.to) < TOUCH;

const marksOnFacets = (facets: readonly Facet[], plates: readonly Plate[]): readonly Mark[] =>
  plates.flatMap((plate) =>
    plate.outlines.flatMap((outline) =>
      outline.flatMap((a, i) => {
        const b = outline[(i + 1) % outline.length]!;
        return facets.flatMap((facet): readonly Mark[] => {
          const ends = [onFacet(facet, plate, a), onFacet(facet, plate, b)];
          const [from, to] = ends;
          if (from == null || to == null || Math.hypot(from[0] - to[0], from[1] - to[1]) < 1) return [];
          return [{ path: [lineSegment(from, to)], what: markWords(plate.baffle) }];
        });
      }),
    ),
  );

const onFacet = (facet: Facet, plate: Plate, at: Vec2): Vec2 | null => {
  if (facet.bend) return null;
  const p = framePoint(plate, at);
  const local = facetLocal(facet, p);
  const away = Math.hypot(...subtract3(p, framePoint(facet, local)));
  const reach = plate.baffle.kind === 'wall' ? plate.baffle.weep + TOUCH : TOUCH;
  if (away > reach) return null;
  const [lo, hi] = [facet.bounds[0]!, facet.bounds[2]!];
  // A corner of a baffle may lie in the bend beside this face; the line then runs on to the corner.
  const slack = 20;
  return local[0] > lo[0] - slack && local[0] < hi[0] + slack ? facetFlat(facet, local) : null;
};

const markWords = (baffle: Baffle): string => {
  if (baffle.kind === 'lid') return `${baffle.name}, underside`;
  return `${baffle.name}, ${baffle.run === 'across' ? 'rear' : 'right'} face`;
};
