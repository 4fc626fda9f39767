import { roadPlane } from 'pan-core';
import { Triangle, Vector3 } from 'three';
import type { PageData, PageObstacle } from './data.js';

type Point3 = readonly [number, number, number];

const nearestOn = ({ points, triangles }: PageObstacle, from: Vector3): Vector3 | null => {
  const [face, found] = [new Triangle(), new Vector3()];
  let best: Vector3 | null = null;
  for (let t = 0; t < triangles.length; t += 3) {
    [face.a, face.b, face.c].forEach((corner, k) => {
      corner.fromArray(points as number[], 3 * (triangles[t + k] as number));
    });
    face.closestPointToPoint(from, found);
    if (best === null || found.distanceTo(from) < best.distanceTo(from)) best = found.clone();
  }
  return best;
};

/**
 * From the pan's place nearest to something at rest to the nearest place of that, as it is drawn; both ends alike
 * where that is not drawn.
 */
export const nearestLine = (data: PageData, name: string): readonly [Point3, Point3] | null => {
  const row = data.fit.clearances.find((one) => one.name === name);
  if (row === undefined || row.at === null) return null;
  const from = new Vector3(...row.at);
  const obstacle = data.obstacles.find((one) => row.between.includes(one.name));
  const road = row.kind === 'ground' ? roadPlane(data.design) : null;
  if (road !== null) {
    const normal = new Vector3(...road.normal);
    const high = from
      .clone()
      .sub(new Vector3(...road.at))
      .dot(normal);
    return [row.at, from.addScaledVector(normal, -high).toArray()];
  }
  return [row.at, (obstacle === undefined ? null : nearestOn(obstacle, from))?.toArray() ?? row.at];
};
