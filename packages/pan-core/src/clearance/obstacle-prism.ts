import type { Prism } from '../design/index.js';
import { type Polygon, polygonArea } from '../geometry/index.js';
import type { Vec2, Vec3 } from '../numeric/index.js';
import { convexParts } from '../pan/index.js';
import type { ConvexPart } from './obstacle-hull.js';

/** A prism as convex pieces; where its outline is hollow they share faces, and no distance ends on those. */
export const prismParts = ({ along, profile, from, to }: Prism): readonly ConvexPart[] =>
  convexParts(counterClockwise(profile)).map((part) => ({
    shape: null,
    hull: { points: [from, to].flatMap((station) => part.map((p) => lifted(along, station, p))), radius: 0 },
  }));

const lifted = (along: Prism['along'], station: number, [a, b]: Vec2): Vec3 => {
  switch (along) {
    case 'x':
      return [station, a, b];
    case 'y':
      return [a, station, b];
    case 'z':
      return [a, b, station];
  }
};

const counterClockwise = (profile: Polygon): Polygon =>
  polygonArea(profile) < 0 ? [...profile].reverse() : profile;
