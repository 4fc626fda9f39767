import type { Cost } from '../weld/index.js';
import { fillerFor, SAYINGS, type Seam } from '../weld/index.js';
import type { CutPlan, NamedPart } from './cut-plan.js';
import { costRows } from './list/cost-words.js';
import { seamNeed } from './list/seam-words.js';
import type { NestGroup } from './nest/nest-group.js';
import { oneLine } from './one-line.js';

/** The set for programs: parts, seams and cautions; lengths to a millionth of a mm. */
export const manifestText = (
  plan: CutPlan,
  nests: readonly NestGroup[],
  cost: Cost,
  files: readonly string[],
): string =>
  `${JSON.stringify(
    {
      format: 1,
      title: plan.title,
      ready: plan.warning === null,
      not_ready: plan.open,
      parts: plan.parts.map(partRow),
      nests: nests.flatMap(nestRows),
      cost: costRows(cost),
      seams: plan.seams.map((seam) => ({
        number: seam.number,
        name: oneLine(seam.name, 120),
        joint: seam.joint,
        side: seam.side,
        run: seam.run,
        length_mm: fine(seam.length),
        size_mm: fine(seam.size),
        root_gap_mm: fine(seam.prep.gap),
        root_gap_from: seam.prep.fit,
        edges: { TIG: seam.prep.TIG, MIG: seam.prep.MIG },
        step: seam.step,
        closed_by: seam.closedBy,
        ...seamNeeds(plan, seam),
      })),
      cautions: [
        ...(plan.warning === null ? [] : [plan.warning]),
        ...[SAYINGS.cut, SAYINGS.weld, SAYINGS.leakTest, SAYINGS.assembly, SAYINGS.fit].map((s) => `${s}.`),
        ...plan.cautions,
      ],
      files,
    },
    null,
    2,
  )}\n`;

const seamNeeds = (plan: CutPlan, seam: Seam): object => {
  const { filler, heat } = seamNeed(plan, seam);
  return {
    filler: fillerFor(plan.design.pan.sheet.material)?.filler ?? null,
    filler_g: filler === null ? null : fine(1000 * filler),
    heat_TIG_kJ: heat.TIG === null ? null : fine(heat.TIG),
    heat_MIG_kJ: heat.MIG === null ? null : fine(heat.MIG),
  };
};

const nestRows = ({ material, thickness, sheet, sheets, parts, tooLarge }: NestGroup): readonly object[] => [
  ...sheets.map((laid) => ({
    file: `2-laser/nests/${laid.file}.dxf`,
    bare_file: `2-laser/nests/bare/${laid.file}.dxf`,
    material,
    thickness_mm: fine(thickness),
    sheet_mm: [fine(sheet.length), fine(sheet.width)],
    gap_mm: fine(sheet.gap),
    edge_mm: fine(sheet.edge),
    used_mm: laid.used.map(fine),
    remnants_mm: laid.remnants.map((piece) => piece.map(fine)),
    places: laid.places.map(({ part, turn, shift }) => ({
      part: oneLine(parts[part]?.part.name ?? '', 120),
      turn_deg: fine((turn * 180) / Math.PI),
      shift_mm: shift.map(fine),
    })),
  })),
  ...tooLarge.map(({ part }) => ({
    file: null,
    material,
    thickness_mm: fine(thickness),
    sheet_mm: [fine(sheet.length), fine(sheet.width)],
    too_large: oneLine(part.name, 120),
  })),
];

const partRow = ({ part, file }: NamedPart): object => ({
  name: oneLine(part.name, 120),
  file: `2-laser/${file}.dxf`,
  bare_file: `2-laser/bare/${file}.dxf`,
  quantity: part.quantity,
  material: part.material,
  thickness_mm: fine(part.thickness),
  flat_mm: part.flat.map(fine),
  area_mm2: fine(part.area),
  cut_length_mm: fine(part.cutLength),
  bends: part.folds.map((fold) => ({
    name: fold.name,
    angle_deg: fine((fold.angle * 180) / Math.PI),
    radius_mm: fine(fold.radius),
    direction: fold.direction,
    allowance_mm: fine(fold.allowance),
  })),
  holes: part.holes.length,
  drilled_after_weld: (part.pilots ?? []).map(({ at, diameter, what }) => ({
    what,
    at_mm: at.map(fine),
    diameter_mm: fine(diameter),
  })),
  joined_to: (part.joins ?? []).map((join) => ({
    seam: oneLine(join.seam, 120),
    piece: oneLine(join.other, 120),
    of: oneLine(join.whole, 120),
    edge: join.side,
    length_mm: fine(join.length),
    root_gap_mm: fine(join.gap),
    at_mm: fine(join.at),
    clear_mm: join.near === null ? null : fine(join.near.away),
    crosses: join.crosses,
    because: join.why,
  })),
  mass_kg: fine(part.mass),
});

const fine = (value: number): number => Number(value.toFixed(6));
