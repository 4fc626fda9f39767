import {
  cautionsFor,
  fillerFor,
  PSI,
  pressureForce,
  SAYINGS,
  type Seam,
  storedEnergy,
  TEST_PSI,
  weldSteps,
} from '../../weld/index.js';
import { type CutPlan, headLines } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import { trimmed } from '../part-words.js';
import { lines } from './bench-words.js';
import {
  cleaningLines,
  flangeRunLines,
  flatnessLines,
  heatLines,
  prepLines,
  seamNeed,
} from './seam-words.js';

/** Seams by step, with filler, sizes and what keeps the flange flat. */
export const weldOrder = (plan: CutPlan): string => {
  const { material } = plan.design.pan.sheet;
  const filler = fillerFor(material);
  const total = plan.seams.reduce((sum, seam) => sum + seam.length, 0);
  return lines([
    ...headLines(plan, 'welding, in order'),
    `${SAYINGS.weld}.`,
    '',
    filler === null
      ? `Filler for ${material}: ask the seller of the sheet.`
      : `Filler for ${material}: ${filler.filler}; ${filler.why} (${filler.source}).`,
    `In all ${(total / 1000).toFixed(2)} m of seam, about ${(fillerMass(plan) * 1000).toFixed(0)} g of metal laid down.`,
    ...heatLines(plan),
    'Fillet legs are about the thinner sheet’s thickness (common practice, no source).',
    'Every seam with its numbers is in seams.csv. Local codes and a licensed welder decide where strength matters.',
    '',
    'What must be clean, and of what',
    ...cleaningLines(material).map((line) => `   - ${line}`),
    '',
    'Edges before welding',
    ...prepLines(plan.seams).map((line) => `   - ${line}`),
    ...weldSteps(plan.design, plan.seams).flatMap((step, i) => [
      '',
      `${i + 1}. ${step.title}`,
      ...step.lines.map((line) => `   ${oneLine(line, 300)}`),
      ...step.seams.map((seam) => `   - ${seamLine(plan, seam)}`),
      ...(step.seams.some((seam) => seam.step === 'flange')
        ? [
            ...flangeRunLines(plan).map((line) => `   ${line}`),
            '   Flatness',
            ...flatnessLines(plan).map((line) => `   - ${line}`),
          ]
        : []),
    ]),
  ]);
};

const seamLine = (plan: CutPlan, seam: Seam): string => {
  const { filler, heat } = seamNeed(plan, seam);
  return [
    `S${seam.number} ${oneLine(seam.name, 120)}: ${seam.joint} ${seam.side}, ${seam.run}, ${seam.length.toFixed(0)} mm,`,
    `${seam.joint === 'fillet' || seam.joint === 'tee' || seam.joint === 'ring' ? 'leg' : 'depth'} ${seam.size.toFixed(1)} mm, root gap ${trimmed(seam.prep.gap, 1)} mm${filler === null ? '' : `, filler ${(1000 * filler).toFixed(1)} g`}${heat.TIG === null ? '' : `, heat ${heat.TIG.toFixed(0)} kJ by TIG`}`,
    ...(seam.closedBy === null ? [] : [`(closed off later by ${oneLine(seam.closedBy, 120)})`]),
  ].join(' ');
};

/** Metal in all seams, kg, a stitched seam counting half; no spatter or stub ends. */
export const fillerMass = (plan: CutPlan): number =>
  plan.seams.reduce((sum, seam) => sum + (seamNeed(plan, seam).filler ?? 0), 0);

/** Every caution with who says so. */
export const cautionText = (plan: CutPlan): string => {
  const seen = new Set<string>();
  const materials = [...new Set(plan.parts.map(({ part }) => part.material))];
  return lines([
    ...headLines(plan, 'cautions'),
    `${SAYINGS.weld}.`,
    `${SAYINGS.leakTest}.`,
    `${SAYINGS.fit}.`,
    ...materials.flatMap((material) => {
      const fresh = [...cautionsFor(material, 'weld'), ...cautionsFor(material, 'cut')].filter((c) => {
        const known = seen.has(c.id);
        seen.add(c.id);
        return !known;
      });
      return fresh.length === 0
        ? []
        : [
            '',
            `${material}:`,
            ...fresh.map(
              (c) =>
                `- ${c.text} (${c.source}${c.flag === 'memory' && !c.source.includes('memory') ? '; from memory' : ''})`,
            ),
          ];
    }),
  ]);
};

/**
 * How to test for leaks, with what the air would hold.
 *
 * @param volume inside the pan to the rail, mm³
 * @param area of the opening that the strongback closes, mm²
 */
export const leakTest = (plan: CutPlan, volume: number, area: number): string => {
  const litres = volume * 1e-6;
  const row = (psi: number): string =>
    `   ${psi} psi (${((psi * PSI) / 1000).toFixed(1)} kPa): ${storedEnergy(psi * PSI, volume).toFixed(0)} J stored, ${pressureForce(psi * PSI, area).toFixed(0)} N on the strongback`;
  return lines([
    ...headLines(plan, 'leak test'),
    `${SAYINGS.leakTest}.`,
    '',
    `Water first: ${litres.toFixed(1)} L, ${(0.998 * litres).toFixed(1)} kg at 20 °C, over clean dry chalked seams, an hour.`,
    'Air only after water, with the strongback bolted on as the blank and every bung plugged:',
    ...[TEST_PSI.low, TEST_PSI.high, TEST_PSI.never].map(row),
    `The last row is the pressure never to pass: relief valve set at ${TEST_PSI.high} psi, regulator first, a gauge that reads to 15 psi.`,
    ...(plan.design.pan.flange.endSeals.length === 0
      ? []
      : [
          'The strongback leaves the arc of each end plate open: clamp a faced block and gasket over it first.',
        ]),
    'Soapy water on the seams from arm’s length, never a face over the pan. Let the air out before loosening a bolt.',
    '',
    'Energy 2.5·P·V·(1 − (Pa/P)^0.286), pressures absolute (ASME PCC-2). No standard sets a pressure for an',
    'engine’s pan; 2–3 psi is common practice, no source. Related: aircraft oil tanks 5 psi (14 CFR 23.1015),',
    'boat fuel tanks to 3 psi (33 CFR 183.586).',
    'Mend a leak only when the pan is dry, vented and clean.',
  ]);
};
