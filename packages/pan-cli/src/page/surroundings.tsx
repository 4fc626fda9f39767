import { type FlatSegment, type Point2, roadPlane, sliceLoops } from 'pan-core';
import type { PageData, PageObstacle } from './data.js';
import { place } from './section-view.js';
import type { ViewPlane } from './view-plane.js';

/** How far round the pan its neighbours are shown, mm. */
const NEAR = 70;
/** How much of the road is drawn as earth, mm. */
const EARTH = 12;

/** Narrower than this, mm, a neighbour's name stands under it. */
const SMALL = 60;

type Point3 = readonly [number, number, number];

const corner = ({ points }: PageObstacle, i: number): Point3 => [
  points[3 * i] as number,
  points[3 * i + 1] as number,
  points[3 * i + 2] as number,
];

const cutObstacle = (obstacle: PageObstacle, plane: ViewPlane): readonly FlatSegment[] => {
  const { triangles } = obstacle;
  return Array.from({ length: triangles.length / 3 }, (_, t) =>
    sliceLoops([[0, 1, 2].map((k) => corner(obstacle, triangles[3 * t + k] as number))], plane),
  ).flat();
};

/** The road in a section along the car, from edge to edge; null where it is not known. */
const roadLine = (data: PageData, { at, low, high }: ViewPlane): readonly [Point2, Point2] | null => {
  const road = roadPlane(data.design);
  if (road === null || Math.abs(road.normal[2]) < 0.5) return null;
  const [nx, ny, nz] = road.normal;
  const height = nx * road.at[0] + ny * road.at[1] + nz * road.at[2];
  const z = (x: number): number => (height - nx * x - ny * at[1]) / nz;
  return [
    [low[0], z(low[0])],
    [high[0], z(high[0])],
  ];
};

/** A neighbour's cut, and where its name stands. */
interface Neighbour {
  readonly name: string;
  readonly segments: readonly FlatSegment[];
  readonly label: Point2;
}

export interface Surroundings {
  /** The view made larger for what it shows. */
  readonly plane: ViewPlane;
  readonly neighbours: readonly Neighbour[];
  readonly road: readonly [Point2, Point2] | null;
}

const middle = (values: readonly number[]): number => (Math.min(...values) + Math.max(...values)) / 2;

/** What stands near the pan in a section along the car. */
export const surroundingsOf = (data: PageData, plane: ViewPlane): Surroundings => {
  const road = roadLine(data, plane);
  const inside = ([x, y]: Point2): boolean =>
    x > plane.low[0] && x < plane.high[0] && y > plane.low[1] - NEAR && y < plane.high[1];
  const neighbours = data.obstacles.flatMap((obstacle): readonly Neighbour[] => {
    const segments = cutObstacle(obstacle, plane);
    const ends = segments.flat();
    if (!ends.some(inside)) return [];
    const [xs, ys] = [ends.map((p) => p[0]), ends.map((p) => p[1])];
    const small = Math.max(...xs) - Math.min(...xs) < SMALL;
    const label: Point2 = [middle(xs), small ? Math.min(...ys) - 20 : middle(ys)];
    return [{ name: obstacle.name, segments, label }];
  });
  const lows = [plane.low[1], ...neighbours.flatMap(({ label }) => [label[1] - 20])];
  const under = road === null ? [] : road.map(([, y]) => y - EARTH);
  return {
    plane: { ...plane, low: [plane.low[0], Math.min(...lows, ...under)] },
    neighbours,
    road,
  };
};

/** The road and the chassis's parts near the pan, cut like the pan itself. */
export const Neighbours = ({ around }: { around: Surroundings }) => {
  const { road, neighbours } = around;
  return (
    <>
      {road === null ? null : (
        <>
          <path
            class="earth"
            d={`M${place(road[0])}L${place(road[1])}L${place([road[1][0], road[1][1] - EARTH])}L${place([road[0][0], road[0][1] - EARTH])}Z`}
          />
          <path class="ground" d={`M${place(road[0])}L${place(road[1])}`} />
          <text class="end" x={road[1][0] - 4} y={-road[1][1] - 5} text-anchor="end">
            road
          </text>
        </>
      )}
      {neighbours.map(({ name, segments, label }) => (
        <g key={name}>
          <path class="neighbour" d={segments.map(([a, b]) => `M${place(a)}L${place(b)}`).join('')} />
          <text class="end" x={label[0]} y={-label[1]} text-anchor="middle">
            {name}
          </text>
        </g>
      ))}
    </>
  );
};
