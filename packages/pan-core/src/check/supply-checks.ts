import type { Design } from '../design/index.js';
import { criticalSubmergence, type OilSystem, type Suction, suctionAt, warmEnough } from '../oil/index.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';
import { BAR, type Supply, supplyOf } from './supply.js';
import practice from './supply-practice.json' with { type: 'json' };

/** Gap and curtain at the mouth, speed in the tube, and what the pump must pull against cold and hot. */
export const supplyChecks = (design: Design, system: OilSystem): readonly Check[] => {
  const supply = supplyOf(design, system);
  return [
    mouthGap(design),
    curtain(design),
    tubeSpeed(design),
    submergence(supply),
    coldSuction(supply),
    hotSuction(supply),
  ];
};

const mouthGap = ({ pickup, limits }: Design): Check => {
  const [least, most] = practice.mouthGap;
  const low = pickup.gap <= ((least as number) + (most as number)) / 2;
  return judge({
    id: 'mouth_gap',
    group: 'mouth',
    title: 'mouth over the floor',
    unit: 'mm',
    value: pickup.gap,
    limit: limitFor(limits, ['mouth_gap'], (low ? least : most) as number),
    wants: low ? 'at least' : 'at most',
    miss: 'warn',
    because: `Common practice is ${least} to ${most} mm: closer chokes it, higher draws air sooner.`,
    fix: 'Set pickup.gap between the two.',
  });
};

const curtain = ({ pickup, limits }: Design): Check =>
  judge({
    id: 'mouth_curtain',
    group: 'mouth',
    title: 'way in under the mouth’s rim',
    unit: 'mm2',
    value: Math.PI * pickup.mouth * pickup.gap,
    limit: limitFor(limits, ['mouth_curtain'], (Math.PI * pickup.bore ** 2) / 4),
    wants: 'at least',
    miss: 'warn',
    because: `Rim ${pickup.mouth} mm round times gap ${pickup.gap} mm, against the tube’s bore of ${pickup.bore} mm.`,
    fix: 'A wider mouth or a larger gap, so that the rim is not the narrowest place.',
  });

const tubeSpeed = ({ pickup, oil, limits }: Design): Check =>
  judge({
    id: 'tube_speed',
    group: 'mouth',
    title: 'speed in the pickup tube',
    unit: 'm/s',
    value: oil.pump === null ? null : oil.pump / ((Math.PI * pickup.bore ** 2) / 4) / 1000,
    limit: limitFor(limits, ['tube_speed'], practice.tubeSpeed),
    wants: 'at most',
    miss: 'warn',
    because: 'Pump flow through the bore; common practice stays under 2.5 to 3 m/s.',
    fix: 'A larger bore.',
  });

/** A rule for water binds nothing: it is told, and never ranks before what oil itself is measured by. */
const INDICATIVE = -0.1;

const submergence = ({ design, under }: Supply): Check => {
  const row = judge({
    id: 'mouth_depth',
    group: 'mouth',
    title: 'running oil over the mouth at rest',
    unit: 'mm',
    value: under,
    limit: limitFor(
      design.limits,
      ['mouth_depth'],
      design.oil.pump === null ? 0 : criticalSubmergence(design.pickup.mouth, design.oil.pump),
    ),
    wants: 'at least',
    miss: 'warn',
    because: 'A rule for water (ANSI/HI 9.8) to keep a whirl from drawing air; indicative only for oil.',
    fix: 'A wider mouth lowers what is wanted; more oil or a lower mouth gives more.',
  });
  return { ...row, margin: Math.max(row.margin, INDICATIVE) };
};

const coldSuction = ({ design, oil, tube, rise }: Supply): Check => {
  const celsius = Math.max(practice.coldest, oil.coldest);
  const { cranking } = design.oil;
  return suctionRow({
    design,
    id: 'suction_cold',
    title: `pump’s pull, cranking at ${minus(celsius)} °C`,
    found:
      tube === null || rise === null || cranking === null
        ? null
        : suctionAt(tube, oil, celsius, cranking, rise),
    fix: 'A larger bore, fewer or wider bends, or a thinner winter grade.',
  });
};

const hotSuction = (supply: Supply): Check => {
  const { design, oil, tube, rise } = supply;
  const { pump } = design.oil;
  const known = tube !== null && rise !== null && pump !== null;
  const row = suctionRow({
    design,
    id: 'suction_hot',
    title: `pump’s pull, full flow at ${practice.hot} °C`,
    found: known ? suctionAt(tube, oil, practice.hot, pump, rise) : null,
    fix: 'A larger bore, or fewer and wider bends.',
  });
  if (!known || row.limit === null) return row;
  const warm = warmEnough(tube, oil, pump, rise, row.limit * BAR);
  const told = warm === null ? '' : ` Full flow keeps within the limit from ${minus(Math.ceil(warm))} °C up.`;
  return { ...row, because: row.because + told };
};

const minus = (celsius: number): string => `${celsius}`.replace('-', '−');

interface SuctionRow {
  readonly design: Design;
  readonly id: string;
  readonly title: string;
  readonly found: Suction | null;
  readonly fix: string;
}

const suctionRow = ({ design, id, title, found, fix }: SuctionRow): Check =>
  judge({
    id,
    group: 'mouth',
    title,
    unit: 'bar',
    value: found === null ? null : found.pull / BAR,
    limit: limitFor(design.limits, [id, 'suction'], practice.suction),
    wants: 'at most',
    miss: 'warn',
    because:
      found === null
        ? 'It takes the tube’s way to the pump (pickup.route) and the pump’s flow (oil.pump).'
        : pullWords(found),
    fix,
  });

const pullWords = (s: Suction): string => {
  const bar = (p: number): string => (p / BAR).toFixed(2);
  const rate = ((s.rate * 60) / 1e6).toFixed(1);
  const thick = s.viscosity >= 100 ? s.viscosity.toFixed(0) : s.viscosity.toFixed(1);
  return (
    `${rate} L/min of oil of ${thick} mm²/s: tube ${bar(s.straight)}, bends ${bar(s.bends)}, ` +
    `mouth ${bar(s.entrance)}, motion ${bar(s.motion)}, lift ${bar(s.lift)} bar; a strainer’s mesh is not counted.`
  );
};
