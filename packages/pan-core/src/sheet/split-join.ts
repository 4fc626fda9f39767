import { lineSegment, type Segment } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { facetAbove, facetStretch } from './cutter.js';
import type { Mark, Part, PartJoin } from './part.js';
import { type SplitPlace, seamPoints } from './split-place.js';
import practice from './split-practice.json' with { type: 'json' };

/** A piece of a part and where the lower left corner of its box lies in the whole blank. */
export interface Piece {
  readonly part: Part;
  readonly shift: Vec2;
}

/** A line along which a blank was cut apart. */
export interface Cut {
  readonly axis: 0 | 1;
  /** Place in the whole blank, mm. */
  readonly at: number;
  readonly place: SplitPlace;
  readonly why: PartJoin['why'];
  readonly name: string | null;
  readonly gap: number;
}

/** Pieces named and numbered from the left and from below, each told what it is joined to and marked for it. */
export const withJoins = (whole: Part, pieces: readonly Piece[], cuts: readonly Cut[]): readonly Part[] => {
  const ordered = [...pieces].sort((a, b) => a.shift[0] - b.shift[0] || a.shift[1] - b.shift[1]);
  const names = ordered.map((_, i) => `${whole.name} piece ${i + 1} of ${ordered.length}`);
  const usual = cuts.filter((cut) => cut.name === null).sort((a, b) => a.axis - b.axis || a.at - b.at);
  const seamName = (cut: Cut): string =>
    cut.name ?? (usual.length === 1 ? `${whole.name} seam` : `${whole.name} seam ${usual.indexOf(cut) + 1}`);
  return ordered.map((piece, i) => {
    const found = cuts.flatMap((cut) =>
      ordered.flatMap((other, k) => {
        const spans = k === i ? [] : sharedSpans(piece, other, cut);
        return spans.length === 0 ? [] : [{ cut, spans, other: names[k]!, seam: seamName(cut) }];
      }),
    );
    const joins = found.map(({ cut, spans, other, seam }): PartJoin => {
      const upper = piece.shift[cut.axis]! >= cut.at;
      const { near } = cut.place;
      return {
        seam,
        whole: whole.name,
        other,
        side: cut.axis === 0 ? (upper ? 'left' : 'right') : upper ? 'lower' : 'upper',
        length: spans.reduce((sum, [a, b]) => sum + b - a, 0),
        gap: cut.gap,
        at: cut.at,
        near: near === null ? null : { what: near.what, away: near.away },
        crosses: cut.place.crosses,
        why: cut.why,
        places: placesOf(whole, cut),
        lines: spans.flatMap((span) => linesOf(whole, cut, span)),
      };
    });
    return {
      ...piece.part,
      name: names[i]!,
      what: `${whole.what} Piece ${i + 1} of ${ordered.length}.`,
      marks: [...piece.part.marks, ...found.flatMap((one) => witnesses(piece, one))],
      notes: [...piece.part.notes, ...joins.map(joinWords)],
      joins,
    };
  });
};

const placesOf = (whole: Part, { axis, at }: Cut): readonly Vec3[] =>
  seamPoints(whole, axis, at).flatMap((p) => {
    const place = facetAbove(whole.faces ?? [], p);
    return place === null ? [] : [place];
  });

/** A stretch of a cut on the pan's inside, a line for each face that it runs over. */
const linesOf = (whole: Part, { axis, at }: Cut, [from, to]: Span): readonly (readonly Vec3[])[] => {
  const place = (v: number): Vec2 => (axis === 0 ? [at, v] : [v, at]);
  return (whole.faces ?? []).flatMap((facet) => {
    const found = facetStretch(facet, place(from), place(to));
    return found === null ? [] : [found];
  });
};

const joinWords = ({ seam, side, other, gap, crosses }: PartJoin): string =>
  `${side[0]!.toUpperCase()}${side.slice(1)} edge: "${seam}", butt to ${other}; ${
    gap === 0 ? 'no root gap' : `root gap ${gap.toFixed(1)} mm, half of it taken off this edge`
  }. Fold both pieces first, then join them with the witness marks in line.${
    crosses.length === 0 ? '' : ` It runs across ${crosses.join(' and ')}.`
  }`;

/** Rounding between an edge and the line it was cut along, mm. */
const SAME = 1e-6;

type Span = readonly [number, number];

/** Stretches over which two pieces face each other across a cut, along the cut in the whole blank. */
const sharedSpans = (a: Piece, b: Piece, cut: Cut): readonly Span[] => {
  const [p, q] = [edgeSpans(a, cut), edgeSpans(b, cut)];
  return p.flatMap(({ span: [a0, a1], upper }) =>
    q.flatMap(({ span: [b0, b1], upper: other }): readonly Span[] => {
      const [low, high] = [Math.max(a0, b0), Math.min(a1, b1)];
      return upper !== other && high - low > SAME ? [[low, high]] : [];
    }),
  );
};

/** A piece's edges along a cut; with no gap an edge's side follows from where the piece lies. */
const edgeSpans = (
  { part, shift }: Piece,
  { axis, at, gap }: Cut,
): readonly { readonly span: Span; readonly upper: boolean }[] =>
  [part.outline, ...part.openings].flat().flatMap((s: Segment) => {
    const upper = shift[axis]! + part.flat[axis]! / 2 > at;
    const line = at + (upper ? gap : -gap) / 2 - shift[axis]!;
    if (s.kind !== 'line' || [s.from, s.to].some((p) => Math.abs(p[axis]! - line) > SAME)) return [];
    const ends = [s.from, s.to].map((p) => p[1 - axis]! + shift[1 - axis]!);
    return [{ span: [Math.min(...ends), Math.max(...ends)] as const, upper }];
  });

/** Short lines square to the seam on both pieces, a quarter in from each end, that must meet. */
const witnesses = (
  { part, shift }: Piece,
  { cut, spans, seam }: { readonly cut: Cut; readonly spans: readonly Span[]; readonly seam: string },
): readonly Mark[] => {
  const { axis, at, gap } = cut;
  const sign = shift[axis]! + part.flat[axis]! / 2 > at ? 1 : -1;
  const edge = at + (sign * gap) / 2 - shift[axis]!;
  const [low, high] = spans.reduce((a, b) => (b[1] - b[0] > a[1] - a[0] ? b : a));
  return [0.25, 0.75].map((t, i): Mark => {
    const v = low + t * (high - low) - shift[1 - axis]!;
    const point = (u: number): Vec2 => (axis === 0 ? [u, v] : [v, u]);
    return {
      path: [lineSegment(point(edge), point(edge + sign * practice.witness_mm))],
      what: i === 0 ? seam : '',
    };
  });
};

/** Every join of pieces once, from the piece whose name comes first. */
export const joinsOnce = (
  parts: readonly Part[],
): readonly { readonly part: Part; readonly join: PartJoin }[] =>
  parts.flatMap((part) =>
    (part.joins ?? []).filter(({ other }) => part.name < other).map((join) => ({ part, join })),
  );
