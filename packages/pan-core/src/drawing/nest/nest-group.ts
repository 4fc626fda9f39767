import type { Vec2 } from '../../numeric/index.js';
import type { CutPlan, NamedPart } from '../cut-plan.js';
import { trimmed } from '../part-words.js';
import { safeNames } from '../safe-name.js';
import { type Nest, type NestSheet, nestParts } from './nest.js';
import { type SheetSize, sheetSize } from './sheet-size.js';

/** Smaller leftovers than this go to scrap, mm; common practice, no source. */
const KEPT = 100;

/** All parts of one material and thickness, laid out on sheets. */
export interface NestGroup {
  readonly material: string;
  readonly thickness: number;
  readonly parts: readonly NamedPart[];
  readonly sheet: SheetSize;
  readonly nest: Nest;
  readonly sheets: readonly NamedSheet[];
  /** Parts that no such sheet holds. */
  readonly tooLarge: readonly NamedPart[];
}

/** A sheet with the name its files carry and what two straight cuts leave of it. */
export interface NamedSheet extends NestSheet {
  readonly file: string;
  /** Length and width of what is worth keeping, larger first, mm. */
  readonly remnants: readonly Vec2[];
}

export const nestGroups = async ({ parts, design }: CutPlan): Promise<readonly NestGroup[]> => {
  const groups = new Map<string, NamedPart[]>();
  for (const named of parts) {
    const key = `${named.part.material} ${trimmed(named.part.thickness, 2)} mm`;
    groups.set(key, [...(groups.get(key) ?? []), named]);
  }
  const stems = safeNames([...groups.keys()]);
  const found: NestGroup[] = [];
  for (const [i, own] of [...groups.values()].entries()) {
    const { material, thickness } = own[0]!.part;
    const sheet = sheetSize(design.shop, thickness);
    const nest = await nestParts(
      own.map(({ part }) => part),
      sheet,
    );
    found.push({
      material,
      thickness,
      parts: own,
      sheet,
      nest,
      sheets: nest.sheets.map((one, k) => ({
        ...one,
        file: `${stems[i]}-sheet-${k + 1}`,
        remnants: remnantsOf(sheet, one.used),
      })),
      tooLarge: nest.tooLarge.map((n) => own[n]!),
    });
  }
  return found;
};

/** Two straight cuts free a corner; whichever is made first, the larger piece they leave should be largest. */
export const remnantsOf = ({ length, width }: SheetSize, [x, y]: Vec2): readonly Vec2[] => {
  const across: readonly Vec2[] = [
    [length - x, width],
    [x, width - y],
  ];
  const along: readonly Vec2[] = [
    [length, width - y],
    [length - x, y],
  ];
  const area = ([a, b]: Vec2): number => a * b;
  const largest = (pair: readonly Vec2[]): number => Math.max(...pair.map(area));
  return [...(largest(across) >= largest(along) ? across : along)]
    .filter(([a, b]) => a >= KEPT && b >= KEPT)
    .sort((a, b) => area(b) - area(a));
};
