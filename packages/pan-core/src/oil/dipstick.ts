import { PanError } from '../errors/index.js';
import { freeze } from '../numeric/index.js';
import type { OilSystem } from './answer.js';
import { inventoryOf } from './inventory.js';
import { type StickCrossing, type StickPath, stickPath } from './stick-path.js';
import { type Ground, readStick, readStickAt } from './stick-reading.js';

/** A place on the stick and the oil in the pan that it stands for; mm and mm³. */
export interface StickMark {
  /** Distance from where the tube enters. */
  readonly along: number;
  readonly volume: number;
}

/** What one degree of slope does to the reading at full; positive reads more oil than there is. */
export interface SlopeError {
  readonly slope: 'nose up' | 'nose down' | 'left side up' | 'right side up';
  /** mm along the stick and mm³; null when the stick no longer reaches the oil. */
  readonly mark: number | null;
  readonly volume: number | null;
}

/** A dipstick worked out for stopped oil in the installed tilt; distances along it from where its tube enters. */
export interface DipstickAnswer {
  readonly path: StickPath;
  readonly full: StickMark;
  readonly add: StickMark;
  /** Its end, short of the sheet. */
  readonly tip: number;
  /** mm of stick for a litre more, at full. */
  readonly perLitre: number;
  readonly slopes: readonly SlopeError[];
  readonly table: readonly StickMark[];
  readonly crossings: readonly StickCrossing[];
}

/** Oil between the two marks, mm³ (common practice, no source). */
export const BETWEEN_MARKS = 1e6;
/** The stick ends this far short of the sheet, mm (common practice, no source). */
export const TIP_GAP = 8;
const TABLE_STEP = 0.25e6;
const ABOVE_FULL = 1e6;
const DEGREE = Math.PI / 180;

/**
 * Marks, errors and table of the design's dipstick. Add stands one litre under full, or half where full is
 * less than two.
 *
 * @throws PanError `input-missing` without a dipstick, `shape-dipstick` where it cannot read the oil
 */
export const dipstickAnswer = (system: OilSystem): DipstickAnswer => {
  const { design } = system.model;
  if (design.dipstick === null) throw noStick();
  const path = stickPath(system.model, design.dipstick);
  if (path === null) {
    throw refuse(
      'The dipstick’s line does not come into the pan.',
      'Check dipstick.enters and dipstick.toward: the line between them, drawn on, must end in the sump.',
    );
  }
  const { stoppedInPan } = inventoryOf(design.oil);
  const tip = path.leaves - TIP_GAP;
  const mark = (volume: number, name: string): StickMark => {
    const reading = readStick(system, path, volume);
    if (reading === null || reading.along > tip) throw tooShort(path, tip, name, volume);
    if (!reading.atMouth) {
      throw refuse(
        `The dipstick stands in a hollow: at ${litres(volume)} it reads oil that is cut off from the pickup.`,
        'Lead it into the sump.',
      );
    }
    return { along: reading.along, volume };
  };
  const full = mark(stoppedInPan, 'full');
  const add = mark(stoppedInPan - Math.min(BETWEEN_MARKS, stoppedInPan / 2), 'add');
  const perLitre = (add.along - full.along) / ((full.volume - add.volume) / 1e6);
  return freeze({
    path,
    full,
    add,
    tip,
    perLitre,
    slopes: slopesAt(system, path, full, perLitre),
    table: tableOf(system, path, tip, full.volume),
    crossings: path.crossings,
  });
};

const litres = (volume: number): string => `${(volume / 1e6).toFixed(1)} L`;

const refuse = (message: string, advice: string): PanError =>
  new PanError({ code: 'shape-dipstick', path: ['dipstick'], message, advice });

const noStick = (): PanError =>
  new PanError({
    code: 'input-missing',
    path: ['dipstick'],
    message: 'The design has no dipstick.',
    advice:
      'Add dipstick: {enters: [x, y, z], toward: [x, y, z]}, from where its tube enters down the stick.',
  });

const tooShort = (path: StickPath, tip: number, name: string, volume: number): PanError => {
  const { enters, along, leaves } = path;
  const at = enters.map((v, i) => (v + leaves * (along[i] as number)).toFixed(0));
  return refuse(
    `The dipstick meets the sheet at x ${at[0]}, y ${at[1]}, z ${at[2]} mm, ${Math.max(0, tip).toFixed(0)} mm along it, above the ${name} mark’s ${litres(volume)}.`,
    'Lead it deeper into the sump, or pour more.',
  );
};

const SLOPES: readonly (readonly [SlopeError['slope'], Ground])[] = [
  ['nose up', { uphill: DEGREE, leftUp: 0 }],
  ['nose down', { uphill: -DEGREE, leftUp: 0 }],
  ['left side up', { uphill: 0, leftUp: DEGREE }],
  ['right side up', { uphill: 0, leftUp: -DEGREE }],
];

const slopesAt = (
  system: OilSystem,
  path: StickPath,
  full: StickMark,
  perLitre: number,
): readonly SlopeError[] =>
  SLOPES.map(([slope, ground]) => {
    const reading = readStick(system, path, full.volume, ground);
    if (reading === null) return { slope, mark: null, volume: null };
    const mark = full.along - reading.along;
    return { slope, mark, volume: (mark / perLitre) * 1e6 };
  });

/** Every quarter litre that the stick can read, to a litre above full. */
const tableOf = (system: OilSystem, path: StickPath, tip: number, full: number): readonly StickMark[] => {
  const room = system.body.capacity.reduce((a, b) => a + b, 0);
  const most = Math.min(full + ABOVE_FULL, room);
  const count = Math.floor(most / TABLE_STEP + 1e-9);
  const volumes = Array.from({ length: count }, (_, i) => (i + 1) * TABLE_STEP);
  return readStickAt(system, path, volumes).flatMap((reading, i) =>
    reading?.atMouth === true && reading.along <= tip
      ? [{ along: reading.along, volume: volumes[i] as number }]
      : [],
  );
};
