import type { OpenSurface } from 'pan-core';
import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  type Plane,
} from 'three';

const MINE = 0xc98a1b;
const APART = 0x8f8a5a;

/** The oil's tops in the solid: one flat sheet for the mouth's pool and one for all others, outlined. */
export const oilTops = (clip: Plane): { group: Group; show: (tops: readonly OpenSurface[]) => void } => {
  const group = new Group();
  const layers = [MINE, APART].map((color) => {
    const [sheet, rim] = [new BufferGeometry(), new BufferGeometry()];
    const common = { color, clippingPlanes: [clip] };
    const fill = new MeshBasicMaterial({ ...common, side: DoubleSide, transparent: true, opacity: 0.85 });
    group.add(
      new Mesh(sheet, fill),
      new LineSegments(rim, new LineBasicMaterial({ ...common, color: 0x22262b })),
    );
    return { sheet, rim };
  });
  const put = (geometry: BufferGeometry, numbers: readonly number[]): void => {
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(numbers), 3));
    geometry.computeBoundingSphere();
  };
  return {
    group,
    show: (tops) => {
      layers.forEach(({ sheet, rim }, i) => {
        const loops = tops.filter(({ hasPickup }) => hasPickup === (i === 0)).map(({ loop }) => loop);
        put(
          sheet,
          loops.flatMap((loop) =>
            loop.slice(2).flatMap((p, k) => [...(loop[0] ?? p), ...(loop[k + 1] ?? p), ...p]),
          ),
        );
        put(
          rim,
          loops.flatMap((loop) => loop.flatMap((p, k) => [...p, ...(loop[(k + 1) % loop.length] ?? p)])),
        );
      });
    },
  };
};
