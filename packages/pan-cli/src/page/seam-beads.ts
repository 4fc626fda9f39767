import type { Vec3 } from 'pan-core';
import { CylinderGeometry, Group, Mesh, MeshBasicMaterial, type Plane, Vector3 } from 'three';

const BEAD = 0x9b1c1c;
const UP = new Vector3(0, 1, 0);

/** Seams drawn as round beads; a line alone is one pixel wide whatever is asked for. */
export interface SeamBeads {
  readonly group: Group;
  readonly show: (lines: readonly (readonly Vec3[])[]) => void;
}

/**
 * @param cut the section's plane, which takes beads away with the metal
 * @param radius mm
 */
export const seamBeads = (cut: Plane, radius: number): SeamBeads => {
  const group = new Group();
  const material = new MeshBasicMaterial({ color: BEAD, clippingPlanes: [cut] });
  // One rod of unit length, stretched to every piece.
  const rod = new CylinderGeometry(radius, radius, 1, 6, 1, true);
  let shown: readonly (readonly Vec3[])[] = [];
  return {
    group,
    show: (lines) => {
      const same = lines.length === shown.length && lines.every((line, i) => line === shown[i]);
      if (same) return;
      shown = lines;
      group.clear();
      for (const line of lines)
        line.slice(1).forEach((q, i) => {
          const [a, b] = [new Vector3(...(line[i] as Vec3)), new Vector3(...q)];
          const along = b.clone().sub(a);
          const length = along.length();
          if (length === 0) return;
          const piece = new Mesh(rod, material);
          piece.position.copy(a).addScaledVector(along, 0.5);
          piece.quaternion.setFromUnitVectors(UP, along.divideScalar(length));
          piece.scale.set(1, length + radius, 1);
          group.add(piece);
        });
    },
  };
};
