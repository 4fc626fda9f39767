import { type Design, findMaterial, type GasketKind } from '../design/index.js';
import { power } from '../numeric/index.js';
import { atMost, type SheetFinding } from './finding.js';
import table from './gaskets.json' with { type: 'json' };

/** N/mm² in a pound per square inch. */
const PSI = 0.006894757;
/** How far a flange may stand off between two bolts, mm: common practice, no source; a flange's own flatness per 300. */
const LIFT = 0.1;

/** What a gasket asks of the flange: factor m, and seating stress y in N/mm². */
export const gasketNeed = (gasket: GasketKind): { readonly m: number; readonly y: number } => {
  const row = table.rows.find((one) => one.gasket === gasket);
  return { m: row?.m ?? 0, y: (row?.y_psi ?? 0) * PSI };
};

/**
 * Widest bolt pitch for a flange's thickness and gasket, mm: 2a + 6t/(m + 0.5), a the bolt's diameter.
 * ASME BPVC VIII-2 (2010), table 4.16.11, seen. Made for round pressure flanges; a guide for others.
 */
export const gasketPitch = (bolt: number, thickness: number, m: number): number =>
  2 * bolt + (6 * thickness) / (m + 0.5);

/**
 * How far a strip lifts half-way between two bolts, mm: a beam built in at both, under an even line load, w L⁴/(384 E I)
 * (any handbook of beams). A full-face gasket loads it by y·b and I is b·t³/12, so its width b falls out:
 * y L⁴/(32 E t³). Range: L more than a few t, and a load of seating alone; the block is taken as rigid.
 */
export const flangeLift = (seating: number, pitch: number, modulus: number, thickness: number): number =>
  (seating * power(pitch, 4)) / (32 * modulus * power(thickness, 3));

/** Two bolts that follow each other, and what is between them. */
export interface BoltGap {
  readonly value: number;
  readonly thread: number;
  readonly where: string;
}

/** Pitch against the flange's stiffness: the published rule, and the lift of a beam where a gasket presses back. */
export const stiffnessFindings = (design: Design, gap: BoltGap): readonly SheetFinding[] => {
  const { thickness, gasket } = design.pan.flange;
  const { m, y } = gasketNeed(gasket);
  const metal = findMaterial(design.pan.sheet.material)?.metal ?? null;
  const thicker = (((gap.value - 2 * gap.thread) * (m + 0.5)) / 6).toFixed(1);
  const rule = atMost(design, {
    id: 'gasket_pitch',
    title: 'bolt pitch for the gasket',
    value: gap.value,
    limit: gasketPitch(gap.thread, thickness, m),
    unit: 'mm',
    below: 'warn',
    because: `${gap.where}; 2a + 6t/(m + 0.5) with ${gasket}, m ${m} (ASME VIII-2 table 4.16.11, made for pressure flanges)`,
    try: () =>
      `Take plate of ${thicker} mm or more, or a softer gasket; the block’s holes are where they are.`,
  });
  if (metal === null || y === 0) return [rule];
  const modulus = table.modulus[metal];
  const lift = flangeLift(y, gap.value, modulus, thickness);
  return [
    rule,
    atMost(design, {
      id: 'flange_lift',
      title: 'flange lift between bolts',
      value: lift,
      limit: LIFT,
      unit: 'mm',
      below: 'warn',
      because: `${gap.where}; a beam built in at both bolts under ${gasket} seated at ${y.toFixed(1)} N/mm², yL⁴/(32Et³)`,
      try: () =>
        `Take plate of ${(thickness * Math.cbrt(lift / (design.limits.flange_lift ?? LIFT))).toFixed(1)} mm or more, or a softer gasket.`,
    }),
  ];
};
