type P = readonly [number, number, number];
type Four = readonly [P, P, P, P];

const minus = (a: P, b: P): P => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
const dot = (a: P, b: P): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: P, b: P): P => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * Distance between two tetrahedra by looking at every corner against every face and every edge against every
 * edge; null when they meet. Slow and plain: the check on the quick way.
 */
export const tetrahedronGap = (a: Four, b: Four): number | null => {
  if (meet(a, b)) return null;
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of [
    [a, b],
    [b, a],
  ] as const)
    for (const p of x) for (const face of facesOf(y)) least = Math.min(least, toTriangle(p, face));
  for (const e of edgesOf(a)) for (const f of edgesOf(b)) least = Math.min(least, betweenEdges(e, f));
  return least;
};

const facesOf = (t: Four): readonly (readonly [P, P, P])[] => [
  [t[0], t[1], t[2]],
  [t[0], t[1], t[3]],
  [t[0], t[2], t[3]],
  [t[1], t[2], t[3]],
];
const edgesOf = (t: Four): readonly (readonly [P, P])[] =>
  t.flatMap((p, i) => t.slice(i + 1).map((q) => [p, q] as const));

/** Convex bodies are apart exactly when a face normal or a cross product of edges parts them. */
const meet = (a: Four, b: Four): boolean => {
  const axes = [
    ...[...facesOf(a), ...facesOf(b)].map(([p, q, r]) => cross(minus(q, p), minus(r, p))),
    ...edgesOf(a).flatMap(([p, q]) => edgesOf(b).map(([r, s]) => cross(minus(q, p), minus(s, r)))),
  ];
  return axes.every((n) => {
    const [u, v] = [a.map((p) => dot(n, p)), b.map((p) => dot(n, p))];
    return Math.max(...u) >= Math.min(...v) && Math.max(...v) >= Math.min(...u);
  });
};

/** Only where the foot falls inside; elsewhere an edge is nearer. */
export const toTriangle = (p: P, [a, b, c]: readonly [P, P, P]): number => {
  const n = cross(minus(b, a), minus(c, a));
  const inside = (
    [
      [a, b],
      [b, c],
      [c, a],
    ] as const
  ).every(([s, t]) => dot(cross(n, minus(t, s)), minus(p, s)) >= 0);
  return inside ? Math.abs(dot(n, minus(p, a))) / Math.hypot(...n) : Number.POSITIVE_INFINITY;
};

const toEdge = (p: P, [a, b]: readonly [P, P]): number => {
  const e = minus(b, a);
  const t = Math.min(1, Math.max(0, dot(minus(p, a), e) / dot(e, e)));
  const way = minus(p, [a[0] + t * e[0], a[1] + t * e[1], a[2] + t * e[2]]);
  return Math.sqrt(dot(way, way));
};

export const betweenEdges = (e: readonly [P, P], f: readonly [P, P]): number => {
  const ends = Math.min(toEdge(e[0], f), toEdge(e[1], f), toEdge(f[0], e), toEdge(f[1], e));
  const [u, v, w] = [minus(e[1], e[0]), minus(f[1], f[0]), minus(f[0], e[0])];
  const n = cross(u, v);
  const size = dot(n, n);
  if (size === 0) return ends;
  const s = dot(cross(w, v), n) / size;
  const t = dot(cross(w, u), n) / size;
  return s > 0 && s < 1 && t > 0 && t < 1 ? Math.min(ends, Math.abs(dot(w, n)) / Math.sqrt(size)) : ends;
};
