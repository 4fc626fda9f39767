import { creaseLines } from './crease-lines.js';
import type { PageMesh } from './data.js';
import { usePage } from './state.js';

type Point3 = readonly [number, number, number];

interface View {
  readonly name: string;
  readonly across: Point3;
  readonly up: Point3;
}

/** As a drawing shows a solid: from the right of the car with its front to the right, from behind, from above. */
const VIEWS: readonly View[] = [
  { name: 'from the side', across: [1, 0, 0], up: [0, 0, 1] },
  { name: 'from behind', across: [0, -1, 0], up: [0, 0, 1] },
  { name: 'from above', across: [1, 0, 0], up: [0, 1, 0] },
];
/** Paper round the solid, mm. */
const ROOM = 40;

const dot = (a: Point3, b: Point3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const flat = (p: Point3, { across, up }: View): readonly [number, number] => [
  Math.round(dot(p, across)),
  Math.round(-dot(p, up)),
];

const drawn = (mesh: PageMesh, view: View): string => {
  const strokes = creaseLines(mesh).flatMap(([a, b]) => {
    const [p, q] = [flat(a, view), flat(b, view)].sort((s, t) => s[0] - t[0] || s[1] - t[1]) as [
      readonly [number, number],
      readonly [number, number],
    ];
    return p[0] === q[0] && p[1] === q[1] ? [] : [`M${p.join(' ')}L${q.join(' ')}`];
  });
  return [...new Set(strokes)].join('');
};

const idOf = (view: number, kind: string, i: number): string => `outline-${view}-${kind}-${i}`;

/** Every part's and obstacle's lines, once for all the views that show them. */
export const OutlineLines = () => {
  const { data } = usePage();
  const kinds = [
    ['pan', data.pan],
    ['near', data.obstacles.filter(({ thinned }) => !thinned)],
  ] as const;
  return (
    <svg class="hatches" width="0" height="0" aria-hidden="true" focusable="false">
      <defs>
        {VIEWS.flatMap((view, v) =>
          kinds.flatMap(([kind, meshes]) =>
            meshes.map((mesh, i) => (
              <path key={idOf(v, kind, i)} id={idOf(v, kind, i)} class="outline" d={drawn(mesh, view)} />
            )),
          ),
        )}
      </defs>
    </svg>
  );
};

const windowOf = (meshes: readonly PageMesh[], view: View): readonly [number, number, number, number] => {
  const spots = meshes.flatMap(({ points }) =>
    Array.from({ length: points.length / 3 }, (_, i) =>
      flat([points[3 * i], points[3 * i + 1], points[3 * i + 2]] as unknown as Point3, view),
    ),
  );
  const [xs, ys] = [spots.map((p) => p[0]), spots.map((p) => p[1])];
  const low = [Math.min(...xs) - ROOM, Math.min(...ys) - ROOM] as const;
  return [low[0], low[1], Math.max(...xs) + ROOM - low[0], Math.max(...ys) + ROOM - low[1]];
};

/** The pan in three plain views among its obstacles, with parts marked and a place pointed at. */
export const OutlineViews = ({
  chosen,
  at,
  words,
}: {
  /** Names of the parts to mark. */
  chosen: readonly string[];
  at: Point3 | null;
  words: string;
}) => {
  const { data } = usePage();
  const near = data.obstacles.filter(({ thinned }) => !thinned);
  return (
    <div class="views three">
      {VIEWS.map((view, v) => {
        const box = windowOf(data.pan, view);
        const said = `The pan ${view.name}. ${words}`;
        const spot = at === null ? null : flat(at, view);
        return (
          <figure key={view.name}>
            <svg
              class="section"
              viewBox={box.join(' ')}
              font-size={(box[2] / 30).toFixed(1)}
              role="img"
              aria-label={said}
            >
              <title>{said}</title>
              {near.map(({ name }, i) => (
                <use key={name} href={`#${idOf(v, 'near', i)}`} class="beside" />
              ))}
              {data.pan.map(({ name }, i) => (
                <use key={name} href={`#${idOf(v, 'pan', i)}`} />
              ))}
              {data.pan.map(({ name }, i) =>
                chosen.includes(name) ? (
                  <use key={name} href={`#${idOf(v, 'pan', i)}`} class="marked" />
                ) : null,
              )}
              {spot === null ? null : (
                <g class="spot">
                  <circle cx={spot[0]} cy={spot[1]} r={box[2] / 45} />
                  <path
                    d={`M${spot[0] - box[2] / 25} ${spot[1]}h${(2 * box[2]) / 25}M${spot[0]} ${spot[1] - box[2] / 25}v${(2 * box[2]) / 25}`}
                  />
                </g>
              )}
            </svg>
            <figcaption>{view.name}</figcaption>
          </figure>
        );
      })}
    </div>
  );
};
