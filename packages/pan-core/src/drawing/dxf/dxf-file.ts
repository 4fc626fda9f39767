import type { PathBox } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import { requireShopRules } from './drawn-entities.js';
import type { Entity, Layer } from './dxf-entity.js';
import { type Group, groupText, real, token, whole, words } from './dxf-group.js';
import { FIRST_FREE_HANDLE, MODEL_SPACE } from './dxf-handles.js';
import { blockSection, classSection, objectSection } from './dxf-objects.js';
import { tableSection } from './dxf-tables.js';

/** Colour numbers of the format's own palette: white, blue, green, grey. */
export const LAYERS: readonly { readonly name: Layer; readonly colour: number }[] = Object.freeze([
  { name: 'through', colour: 7 },
  { name: 'fold', colour: 5 },
  { name: 'mark', colour: 3 },
  { name: 'note', colour: 8 },
]);

/**
 * A whole drawing in the 2000 edition of the format (AC1015), model space, millimetres. The same
 * entities always give the same text.
 *
 * @param box around everything drawn, mm
 * @param comments sentences at the head of the file that readers do not draw
 * @throws PanError `sheet-cut` when the cuts break a rule of the shop
 */
export const dxfFile = (
  entities: readonly Entity[],
  box: PathBox,
  comments: readonly string[] = [],
): string => {
  requireShopRules(entities);
  const drawn = entities.flatMap((entity, i): Group[] => [
    token(0, entity.type),
    token(5, handle(FIRST_FREE_HANDLE + i)),
    token(330, MODEL_SPACE),
    token(100, 'AcDbEntity'),
    token(8, entity.layer),
    ...entity.body,
  ]);
  return groupText([
    ...comments.map((comment) => words(999, comment)),
    ...headerSection(box, handle(FIRST_FREE_HANDLE + entities.length)),
    ...classSection(),
    ...tableSection(LAYERS, box),
    ...blockSection(),
    token(0, 'SECTION'),
    token(2, 'ENTITIES'),
    ...drawn,
    token(0, 'ENDSEC'),
    ...objectSection(box),
    token(0, 'EOF'),
  ]);
};

const handle = (n: number): string => n.toString(16).toUpperCase();

const headerSection = (box: PathBox, seed: string): Group[] => {
  const variable = (name: string, ...values: Group[]): Group[] => [token(9, name), ...values];
  const corner = (at: Vec2): Group[] => [real(10, at[0]), real(20, at[1]), real(30, 0)];
  return [
    token(0, 'SECTION'),
    token(2, 'HEADER'),
    ...variable('$ACADVER', token(1, 'AC1015')),
    ...variable('$DWGCODEPAGE', token(3, 'ANSI_1252')),
    ...variable('$EXTMIN', ...corner(box.min)),
    ...variable('$EXTMAX', ...corner(box.max)),
    ...variable('$LUNITS', whole(70, 2)),
    ...variable('$LUPREC', whole(70, 3)),
    ...variable('$MEASUREMENT', whole(70, 1)),
    ...variable('$INSUNITS', whole(70, 4)),
    ...variable('$TILEMODE', whole(70, 1)),
    ...variable('$HANDSEED', token(5, seed)),
    token(0, 'ENDSEC'),
  ];
};
