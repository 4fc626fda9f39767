import { type Design, type Manoeuvre, slug } from '../design/index.js';
import type { Vec3 } from '../numeric/index.js';
import { crankDips, depthUnderOil, type OilAnswer, type OilSystem } from '../oil/index.js';
import { fullest } from './crank-dip-table.js';
import { describeLoad, type MouthCase } from './mouth-case.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/** One manoeuvre in the state that matters for a question, with its answer. */
interface Found {
  readonly manoeuvre: Manoeuvre;
  readonly state: 'held' | 'settled';
  /** mm under oil, negative when clear. */
  readonly depth: number;
  readonly where: string;
}

type Depth = (answer: OilAnswer) => { readonly depth: number | null; readonly where: string };

/**
 * Rods, rear main seal, returns, breathers and the dipstick’s tube under oil in the manoeuvres.
 *
 * @param fills each manoeuvre at every running fill; the most oil is the worst here
 */
export const crankDipChecks = (
  design: Design,
  system: OilSystem,
  fills: readonly (readonly MouthCase[])[],
): readonly Check[] => {
  const cases = fills.map((of) => {
    const { manoeuvre, held, settled } = fullest(of);
    return {
      manoeuvre,
      answers: [
        { state: 'held', answer: held },
        { state: 'settled', answer: settled },
      ] as const,
    };
  });
  const worst = (depth: Depth, of = cases): Found | null =>
    of
      .flatMap(({ manoeuvre, answers }) =>
        answers.flatMap(({ state, answer }): readonly Found[] => {
          const found = depth(answer);
          return found.depth === null ? [] : [{ manoeuvre, state, depth: found.depth, where: found.where }];
        }),
      )
      .reduce<Found | null>((a, b) => (a === null || b.depth > a.depth ? b : a), null);
  return [
    ...cases.flatMap((one) => rodRow(design, worst(deepestThrow(system), [one]), one.manoeuvre)),
    ...placesOf(design, system).flatMap((place) => {
      const found = worst((answer) => ({
        depth: depthUnderOil(system.model, answer, place.at),
        where: place.title,
      }));
      return found === null ? [] : [placeRow(design, place, found)];
    }),
  ];
};

const deepestThrow =
  ({ model }: OilSystem): Depth =>
  (answer) =>
    crankDips(model, answer).reduce<ReturnType<Depth>>(
      (a, { depth, throw: n, x }) =>
        depth !== null && (a.depth === null || depth > a.depth)
          ? { depth, where: `throw ${n} from the rear, x ${x.toFixed(0)}` }
          : a,
      { depth: null, where: '' },
    );

const rodRow = (design: Design, found: Found | null, { name }: Manoeuvre): readonly Check[] => {
  if (found === null) return [];
  const id = `rods_${slug(name)}`;
  return [
    judge({
      id,
      group: 'crank',
      title: `${name}, rods in oil`,
      unit: 'mm',
      value: found.depth,
      limit: limitFor(design.limits, [id, 'rods'], 0),
      wants: 'at most',
      miss: 'warn',
      because: `${describeLoad(found.manoeuvre)}, ${found.state}: ${found.where} mm; negative is clear of it.`,
      fix: 'A baffle or tray that keeps oil off the crank, less oil, or a larger sump behind the step.',
    }),
  ];
};

/** How far inside a wall a place is asked for, so that it is in the oil's room, mm. */
const INSIDE = 0.01;

/** Something that should stay out of the oil. */
interface Place {
  readonly id: string;
  readonly title: string;
  readonly at: Vec3;
  readonly why: string;
  readonly fix: string;
}

const placesOf = (design: Design, system: OilSystem): readonly Place[] => {
  const { crank } = design.engine;
  const rear = rearOf(system);
  const seal: readonly Place[] =
    crank === null || rear === null
      ? []
      : [
          {
            id: 'rear_seal',
            title: 'rear main seal',
            at: [rear, 0, crank.centreAboveRail],
            why: 'Half of the seal is under oil once it stands over the crank’s centre at the rear face',
            fix: 'Less oil, or a baffle that keeps it from running to the rear.',
          },
        ];
  const rail: readonly Place[] =
    rear === null
      ? []
      : [
          {
            id: 'rear_rail',
            title: 'rail at the rear face',
            at: [rear, 0, 0],
            why: 'Oil over the rail stands against the rear end’s gasket and seal housing',
            fix: 'Less oil, or a lid over the rear of the sump; else seal the corners with care.',
          },
        ];
  const bungs = design.bungs
    .filter(({ purpose }) => purpose === 'return' || purpose === 'breather')
    .map(
      ({ name, purpose, at }): Place => ({
        id: `under_oil_${slug(name)}`,
        title: name,
        at,
        why: purpose === 'return' ? 'A return under oil backs up' : 'A breather under oil blows it out',
        fix: 'Move it up, or away from where the oil goes.',
      }),
    );
  const tube: readonly Place[] =
    design.dipstick === null
      ? []
      : [
          {
            id: 'under_oil_dipstick_tube',
            title: 'dipstick tube',
            at: design.dipstick.enters,
            why: 'Oil over the tube’s end can climb it and push the stick out',
            fix: 'Bring the tube in higher, and let the stick seal.',
          },
        ];
  return [...seal, ...rail, ...endSealPlaces(design), ...bungs, ...tube];
};

/** The foot of each end plate's arc, at the pan's end wall: the lowest place where a seal keeps the oil in. */
const endSealPlaces = (design: Design): readonly Place[] =>
  design.pan.flange.endSeals.map(({ end, radius, centreAboveRail, across }): Place => {
    const { floor } = design.pan;
    const wall = end === 'front' ? floor[0]![0] : floor[floor.length - 1]![0];
    return {
      id: `end_seal_oil_${end}`,
      title: `${end} end seal`,
      at: [wall + (end === 'front' ? -INSIDE : INSIDE), across, centreAboveRail - radius],
      why: 'Oil over the foot of the end plate’s arc stands against its seal',
      fix: 'Less oil, a baffle that keeps it from that end, or a seal in a groove, bedded in sealant.',
    };
  });

/** x just inside the rearmost room above the rail. */
const rearOf = ({ model }: OilSystem): number | null => {
  const xs = model.cells
    .filter((cell) => cell.zone === 'crankcase')
    .flatMap((cell) => cell.faces.flatMap((f) => f.loop.map((p) => p[0])));
  return xs.length === 0 ? null : Math.min(...xs);
};

const placeRow = (design: Design, place: Place, found: Found): Check =>
  judge({
    id: place.id,
    group: 'crank',
    title: `${place.title} under oil`,
    unit: 'mm',
    value: found.depth,
    limit: limitFor(design.limits, [place.id], 0),
    wants: 'at most',
    miss: 'warn',
    because: `${place.why}. Worst: ${found.manoeuvre.name}, ${describeLoad(found.manoeuvre)}, ${found.state}; negative is clear of it.`,
    fix: place.fix,
  });
