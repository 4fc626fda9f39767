/**
 * How far a plate must stop short of a corner whose metal lies on the oil's far side, so that it butts
 * against the other plate's outside instead of running into it. Two plates of thickness T whose inside
 * faces meet at an edge with the angle φ (0–π) between them on the metal side: T/sin φ, and T/tan φ more
 * where φ is sharp and the square-cut outer edge would strike first. Plane geometry.
 */
export const buttTrim = (metalAngle: number, thickness: number): number =>
  thickness / Math.sin(metalAngle) + Math.max(0, thickness / Math.tan(metalAngle));
