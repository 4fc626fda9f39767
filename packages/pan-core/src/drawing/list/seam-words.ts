import { findMaterial, type Point2 } from '../../design/index.js';
import {
  cleaningFor,
  fillerFor,
  filletMass,
  laidLength,
  PRACTICE,
  runOrder,
  type Seam,
  type SeamSide,
  seamHeat,
} from '../../weld/index.js';
import { csv } from '../csv.js';
import type { CutPlan } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import { trimmed } from '../part-words.js';
import { ready, tableFoot } from './bench-words.js';

/** What a seam takes: metal laid down, kg, and heat for each process, kJ. */
export interface SeamNeed {
  readonly filler: number | null;
  readonly heat: { readonly TIG: number | null; readonly MIG: number | null };
}

export const seamNeed = ({ design }: CutPlan, seam: Seam): SeamNeed => {
  const { material, thickness } = design.pan.sheet;
  const density = findMaterial(material)?.density ?? null;
  // A joint of plates is laid from both faces, and each run melts half of the plate.
  const heats = seamHeat(seam, material, seam.step === 'plate' ? seam.size : thickness);
  const of = (process: 'TIG' | 'MIG'): number | null =>
    heats.find((heat) => heat.process === process)?.total ?? null;
  return {
    filler: density === null ? null : filletMass(seam.size, laidLength(seam), density),
    heat: { TIG: of('TIG'), MIG: of('MIG') },
  };
};

/** Every seam with all a welder asks, a row a seam, in the order they are laid. */
export const seamTable = (plan: CutPlan): string => {
  const filler = fillerFor(plan.design.pan.sheet.material)?.filler ?? 'ask the seller of the sheet';
  return csv([
    [
      'no',
      'step',
      'seam',
      'joint',
      'side',
      'run',
      'length_mm',
      'laid_mm',
      'size_mm',
      'root_gap_mm',
      'root_gap_from',
      'edges_TIG',
      'edges_MIG',
      'filler',
      'filler_g',
      'heat_TIG_kJ',
      'heat_MIG_kJ',
      'closed_off_later_by',
      'ready',
    ],
    ...plan.seams.map((seam) => {
      const { filler: mass, heat } = seamNeed(plan, seam);
      return [
        `S${seam.number}`,
        seam.step,
        oneLine(seam.name, 120),
        seam.joint,
        seam.side,
        seam.run,
        Number(seam.length.toFixed(0)),
        Number(laidLength(seam).toFixed(0)),
        Number(seam.size.toFixed(2)),
        Number(seam.prep.gap.toFixed(2)),
        seam.prep.fit,
        seam.prep.TIG,
        seam.prep.MIG,
        filler,
        mass === null ? '' : Number((1000 * mass).toFixed(1)),
        heat.TIG === null ? '' : Number(heat.TIG.toFixed(0)),
        heat.MIG === null ? '' : Number(heat.MIG.toFixed(0)),
        seam.closedBy === null ? '' : oneLine(seam.closedBy, 120),
        ready(plan),
      ];
    }),
    ...tableFoot(plan),
  ]);
};

/** What all seams together take in, by process, with the settings that it was reckoned from. */
export const heatLines = (plan: CutPlan): readonly string[] => {
  const { material, thickness } = plan.design.pan.sheet;
  const [any] = plan.seams;
  if (any === undefined) return [];
  return seamHeat(any, material, thickness).map(({ process, amps, volts, travel, perMm }) => {
    const total = plan.seams.reduce((sum, seam) => sum + perMm * laidLength(seam), 0);
    return `Heat by ${process}: about ${perMm.toFixed(2)} kJ/mm, ${(total / 1000).toFixed(1)} MJ in all, from ${amps.toFixed(0)} A, ${volts} V and ${travel} mm/min: a place to begin and no instruction (common practice, no source).`;
  });
};

/** Root gap and edges, a line for each kind among the seams, with the joints it is for. */
export const prepLines = (seams: readonly Seam[]): readonly string[] => {
  const kinds = new Map<string, { readonly seam: Seam; readonly joints: Set<string> }>();
  for (const seam of seams) {
    const { gap, fit, TIG, MIG } = seam.prep;
    const key = [gap, fit, TIG, MIG].join('|');
    const kind = kinds.get(key) ?? { seam, joints: new Set<string>() };
    kind.joints.add(seam.joint);
    kinds.set(key, kind);
  }
  return [...kinds.values()].map(({ seam: { prep }, joints }) => {
    const edges = prep.TIG === prep.MIG ? prep.TIG : `by TIG ${prep.TIG}; by MIG ${prep.MIG}`;
    return `${[...joints].join(', ')}: root gap ${trimmed(prep.gap, 1)} mm (${prep.fit}); ${edges} (${prep.source}).`;
  });
};

export const cleaningLines = (material: string): readonly string[] =>
  cleaningFor(material).map(({ what, of, how, source }) => `${what}, of ${of}: ${how} (${source}).`);

/** The flange's runs one after another, four to a line. */
export const flangeRunLines = (plan: CutPlan): readonly string[] => {
  const runs = runOrder(flangeSides(plan), PRACTICE.stitch[1]).map(
    ({ side, from, to }, i) => `${i + 1} ${side} ${signed(from)} to ${signed(to)}`,
  );
  const rows: string[] = [];
  for (let i = 0; i < runs.length; i += 4) rows.push(`${runs.slice(i, i + 4).join('; ')};`);
  return [
    'Runs in order, mm from the middle of the side, + to the front or to the left of the car:',
    ...rows,
  ];
};

const signed = (value: number): string =>
  Math.abs(value) < 0.5 ? '0' : `${value < 0 ? '−' : '+'}${Math.abs(value).toFixed(0)}`;

const flangeSides = ({ design }: CutPlan): readonly SeamSide[] => {
  const { floor, left, right } = design.pan;
  const [front, rear] = [floor[0]?.[0] ?? 0, floor[floor.length - 1]?.[0] ?? 0];
  const width = (stations: readonly Point2[], end: 'front' | 'rear'): number =>
    (end === 'front' ? stations[stations.length - 1]?.[1] : stations[0]?.[1]) ?? 0;
  const across = (end: 'front' | 'rear'): number => width(left, end) + width(right, end);
  return [
    { name: 'front', length: across('front') },
    { name: 'rear', length: across('rear') },
    { name: 'left', length: front - rear },
    { name: 'right', length: front - rear },
  ];
};

/** How flat the flange must be and how that is found out. */
export const flatnessLines = (plan: CutPlan): readonly string[] => {
  const { flatness, flatnessOver } = PRACTICE;
  const [length] = [plan.design.engine.rail.outline.map((p) => p[0])];
  const reach = Math.max(...length) - Math.min(...length);
  const allowed = (flatness * reach) / flatnessOver;
  return [
    `Limit: ${flatness.toFixed(2)} mm in any ${flatnessOver} mm, ${allowed.toFixed(2)} mm over the flange’s ${trimmed(reach, 0)} mm (common practice, no source).`,
    'Lay the rail face on a surface plate, or on plate glass 10 mm thick, without pressing; try a feeler gauge at every bolt hole and half-way between.',
    `No plate: a ground straight-edge along both sides, both ends and both diagonals; no ${flatness.toFixed(2)} mm feeler may pass within ${flatnessOver} mm.`,
    'Measure bare, after tacking, and when it is cold and off the strongback; write the numbers at the holes. Measure the strongback first: it can be no flatter than that.',
    'More than the limit: mill or face it on the strongback’s datum, or press it while it is bolted; never pull it flat with the block’s bolts.',
  ];
};
