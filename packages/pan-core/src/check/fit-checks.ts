import { type Clearance, clearances, type MeetMeasure } from '../clearance/index.js';
import { type Design, STAY, slug } from '../design/index.js';
import { outerSolids, type PanModel, platesOf } from '../pan/index.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

const BOLTS = 'flange bolts';

/** Every clearance as a check, at its worst over engine movement and measurement. */
export const fitChecks = (
  design: Design,
  model: PanModel,
  measure: MeetMeasure = 'depth',
): readonly Check[] => {
  // A limit below 0 lets things meet by so much, and then it is the depth that counts.
  const told = Object.values(design.limits).some((limit) => limit < 0) ? 'depth' : measure;
  const found = clearances(design, outerSolids(design, model.profile), platesOf(model), told);
  return worstBeside(worstBolt(found)).map((c) => clearanceCheck(design, c));
};

/** Bolts as one row: the tightest, with how many there are; thirty rows would hide the rest. */
const worstBolt = (all: readonly Clearance[]): readonly Clearance[] => {
  const bolts = all.filter((c) => c.kind === 'bolt' && c.worst !== null);
  const tightest = bolts.reduce<Clearance | null>(
    (a, b) => (a === null || slack(b) < slack(a) ? b : a),
    null,
  );
  if (tightest === null) return all;
  const hidden = bolts.filter((c) => c.overhead !== null).length;
  const because =
    hidden === 0
      ? tightest.because
      : `${tightest.because} Wings stand below ${hidden} of ${bolts.length} bolts.`;
  return [...all.filter((c) => c.kind !== 'bolt'), { ...tightest, name: BOLTS, because }];
};

/** What moves with the pan keeps its distance for good, so that only the nearest of it is worth a row. */
const worstBeside = (all: readonly Clearance[]): readonly Clearance[] => {
  const beside = all.filter((c) => c.kind === 'engine');
  const known = beside.filter((c) => c.worst !== null);
  const tightest = known.reduce<Clearance | null>(
    (a, b) => (a === null || slack(b) < slack(a) ? b : a),
    null,
  );
  return all.filter((c) => c.kind !== 'engine' || c === tightest || c.worst === null);
};

const slack = (c: Clearance): number => (c.worst ?? 0) - c.allowed;

const idOf = (kind: Clearance['kind'], name: string): string =>
  kind === 'ground' && name === 'ground' ? 'ground' : `clear_${slug(kind === 'bolt' ? BOLTS : name)}`;

/** What a clearance has to be, the user's own limit taken in. */
export const clearanceLimit = (
  design: Design,
  kind: Clearance['kind'],
  name: string,
  usual: number,
): number => limitFor(design.limits, [idOf(kind, name)], usual);

/** A clearance judged at its worst. */
export const clearanceCheck = (design: Design, c: Clearance): Check => {
  const id = idOf(c.kind, c.name);
  const limit = clearanceLimit(design, c.kind, c.name, c.allowed);
  const short = c.worst === null ? 0 : limit - c.worst;
  return judge({
    id,
    group: c.kind === 'crank' ? 'crank' : 'fit',
    title: c.name,
    unit: 'mm',
    value: c.worst,
    limit,
    wants: 'at least',
    miss: c.name.endsWith('pickup tube') && design.pickup.route.length === 0 ? 'warn' : 'fail',
    because: c.because,
    fix: c.worst === null ? '' : remedy(c, short),
  });
};

const remedy = ({ kind, worstBetween: [ours, other] }: Clearance, short: number): string => {
  const more = `${Math.ceil(short)} mm more`;
  switch (kind) {
    case 'ground':
      return `${more} under ${ours}: a shallower sump, a shorter plug, or the engine higher.`;
    case 'crank':
      if (other === STAY)
        return `${more} between ${ours} and ${other}: a bolt nearer the middle between two throws, or a narrower strip.`;
      return `${more} between ${ours} and ${other}: lower the ${other}.`;
    case 'bolt':
      return `${more} from the hole to the wall: move the wall in or the hole out.`;
    case 'carried':
      return `${more} between ${ours} and ${other}: move or lower the engine, or give the ${other} that room.`;
    case 'engine':
      return `${more} between ${ours} and ${other}: move the pan’s face there, or notch it.`;
    default:
      return `${more} between ${ours} and ${other}: move the pan’s face there, notch it, or move the engine.`;
  }
};
