import type { Baffle, Bung } from '../../design/index.js';
import { PanError } from '../../errors/index.js';
import { fastenerFor, floorProfile } from '../../pan/index.js';
import { fillerFor } from '../../weld/index.js';
import { csv } from '../csv.js';
import { type CutPlan, headLines } from '../cut-plan.js';
import { oneLine } from '../one-line.js';
import { trimmed } from '../part-words.js';
import { lines, ready, tableFoot } from './bench-words.js';
import { bendsOrProblem } from './tube-words.js';
import { fillerMass } from './weld-words.js';

/** Sheet and plate to buy, a row a part. */
export const cutList = (plan: CutPlan): string =>
  csv([
    [
      'part',
      'what',
      'quantity',
      'material',
      'thickness_mm',
      'length_mm',
      'width_mm',
      'cut_m',
      'mass_kg',
      'welded_to',
      'ready',
    ],
    ...plan.parts.map(({ part, file }) => [
      file,
      oneLine(part.what, 120),
      part.quantity,
      part.material,
      Number(part.thickness.toFixed(3)),
      Number(part.flat[0].toFixed(1)),
      Number(part.flat[1].toFixed(1)),
      Number((part.cutLength / 1000).toFixed(2)),
      Number(part.mass.toFixed(3)),
      (part.joins ?? [])
        .map(({ other, seam }) => `${oneLine(other, 120)} (${oneLine(seam, 120)})`)
        .join(' and '),
      ready(plan),
    ]),
    ...tableFoot(plan),
  ]);

/** What is bought ready-made. */
export const boughtList = (plan: CutPlan): string =>
  lines([
    ...headLines(plan, 'bought parts'),
    ...[...bolts(plan), ...pickup(plan), ...fittings(plan), ...baffles(plan), ...consumables(plan)].map(
      (l) => `- ${l}`,
    ),
  ]);

/** Bolts by thread: grip plus one and a half threads of engagement, up to the next 5 mm (common practice). */
const bolts = ({ design }: CutPlan): readonly string[] => {
  const { railHoles } = design.engine;
  if (railHoles.length === 0) {
    return ['Flange bolts: the holes were not measured; count and size them at the block.'];
  }
  const threads = [...new Set(railHoles.map((hole) => hole.thread))].sort((a, b) => a - b);
  return threads.map((thread) => {
    const washer = fastenerFor(thread).washerThickness;
    const length = Math.ceil((design.pan.flange.thickness + washer + 1.5 * thread) / 5) * 5;
    const count = railHoles.filter((hole) => hole.thread === thread).length;
    return `${count} bolts M${trimmed(thread, 1)} x ${length} with washers for the flange; check the depth of the holes in the block first`;
  });
};

const pickup = ({ design }: CutPlan): readonly string[] => {
  const { bore, wall, mouth, stay } = design.pickup;
  const list = bendsOrProblem(design, floorProfile(design));
  const tube = `tube, bore ${trimmed(bore, 1)} mm, wall ${trimmed(wall, 1)} mm`;
  return [
    list === null
      ? `Pickup ${tube}: the line was not given; measure it in the mock-up`
      : list instanceof PanError
        ? `Pickup ${tube}: its line cannot be bent as it is given, see 3-bench/pickup-tube.txt`
        : `Pickup ${tube}: ${Math.ceil(list.cut / 10) * 10} mm along its line, and 100 mm to hold in the bender`,
    ...(stay === undefined
      ? []
      : [
          `For the pickup’s stay: M${stay.size} bolt or nut as the engine has there, a plain steel clip for a ${trimmed(bore + 2 * wall, 1)} mm tube, M${stay.clip} bolt with all-metal lock nut`,
        ]),
    `Coarse gauze for the mouth, ${trimmed(mouth, 1)} mm across, and a seal for the pump’s port`,
  ];
};

/** What goes into a bung and how it seals. */
const threadWords = ({ purpose, thread }: Bung): string => {
  const into = GOES_IN[purpose];
  return thread === undefined
    ? `thread to suit ${into}`
    : `thread M${trimmed(thread.diameter, 1)} x ${trimmed(thread.pitch, 2)}, with ${into} and a sealing washer`;
};

const GOES_IN: Readonly<Record<Bung['purpose'], string>> = {
  return: 'the return’s fitting',
  breather: 'the breather’s fitting',
  temperature: 'the temperature sender',
  level: 'the level sender',
  magnet: 'a magnetic plug',
  other: 'its plug',
};

const fittings = ({ design }: CutPlan): readonly string[] => [
  ...(design.drain === null
    ? []
    : [
        `Drain bung ${trimmed(design.drain.bung, 1)} mm outside with plug M${trimmed(design.drain.thread.diameter, 1)} x ${trimmed(design.drain.thread.pitch, 2)} and two sealing washers`,
      ]),
  ...design.bungs.map(
    (bung) =>
      `Bung "${oneLine(bung.name, 60)}" (${bung.purpose}), ${trimmed(bung.diameter, 1)} mm outside, ${threadWords(bung)}`,
  ),
];

const baffles = ({ design, parts }: CutPlan): readonly string[] => {
  const bolted = design.baffles.filter((b) => b.fixed === 'bolted');
  const doors = design.baffles.reduce((sum, b) => sum + (b.kind === 'wall' ? b.doors.length : 0), 0);
  return [
    ...bolted.flatMap((b) => mounts(b)),
    ...(doors === 0
      ? []
      : [`${doors} steel piano hinges as long as the doors are wide, pins peened or welded in`]),
    ...rivets(parts),
  ];
};

/** What holds a bolted baffle: at its tabs and studs, or as the builder finds room. */
const mounts = (baffle: Baffle): readonly string[] => {
  const name = oneLine(baffle.name, 60);
  const { tabs, studs } = baffle.kind === 'lid' ? baffle : {};
  if (tabs === undefined && studs === undefined)
    return [
      `M6 bolts with locking plates for "${name}": one every 60–80 mm of its edge, at least four (common practice, no source)`,
    ];
  return [
    ...(tabs === undefined
      ? []
      : [
          `${2 * tabs.eachSide} bolts M${trimmed(tabs.size, 1)} with weld nuts and locking plates for the tabs of "${name}"`,
        ]),
    ...(studs === undefined
      ? []
      : [
          `${studs.at.length} studs M${trimmed(studs.size, 1)} in the engine with spacers, washers and all-metal lock nuts for "${name}": drill and tap no cap without its maker’s word`,
        ]),
  ];
};

/** Rivets by size: each passes one hole of a flap or of a hinge strip. */
const rivets = (parts: CutPlan['parts']): readonly string[] => {
  const holes = parts.flatMap(({ part }) =>
    part.holes
      .filter((hole) => hole.what === 'rivet')
      .flatMap((hole) => Array(part.quantity).fill(hole.diameter)),
  );
  const sizes = [...new Set<number>(holes)].sort((a, b) => a - b);
  return sizes.map(
    (size) =>
      `${holes.filter((d) => d === size).length} solid rivets for ${trimmed(size, 1)} mm holes, and spares`,
  );
};

const sealWords = ({ pan: { flange } }: CutPlan['design']): string =>
  flange.gasket === 'sealant' ? 'Gasket or sealant' : `Gasket of ${flange.gasket}`;

const consumables = (plan: CutPlan): readonly string[] => {
  const { design } = plan;
  const filler = fillerFor(design.pan.sheet.material);
  const { outline } = design.engine.rail;
  const round = outline.reduce((sum, p, i) => {
    const q = outline[(i + 1) % outline.length] ?? p;
    return sum + Math.hypot(q[0] - p[0], q[1] - p[1]);
  }, 0);
  return [
    `Filler ${filler?.filler ?? 'as the seller of the sheet says'}: ${(fillerMass(plan) * 1000).toFixed(0)} g laid down; buy twice that`,
    `${sealWords(design)} for ${(round / 1000).toFixed(1)} m of rail, and a second one for the next time`,
    ...design.pan.flange.endSeals.map(
      ({ end, radius, groove }) =>
        `Seal for the ${end} end’s round, R ${trimmed(radius, 2)} mm${groove === null ? '' : `, to fill a groove ${trimmed(groove.width, 1)} x ${trimmed(groove.depth, 1)} mm`}`,
    ),
    `Oil ${oneLine(design.oil.grade, 20)}: ${(design.oil.fill * 1e-6).toFixed(1)} L`,
    'An oil-pressure warning light or gauge with a switch, if the car has none that is quick',
  ];
};
