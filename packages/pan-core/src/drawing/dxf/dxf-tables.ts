import type { PathBox } from '../../geometry/index.js';
import { type Group, real, token, whole } from './dxf-group.js';
import {
  MODEL_LAYOUT,
  MODEL_SPACE,
  PAPER_LAYOUT,
  PAPER_SPACE,
  PLOT_STYLE,
  section,
  TABLE,
} from './dxf-handles.js';

export const tableSection = (
  layers: readonly { readonly name: string; readonly colour: number }[],
  box: PathBox,
): Group[] => {
  const lineType = (h: string, name: string): Group[] => [
    ...record('LTYPE', h, 'AcDbLinetypeTableRecord', name),
    token(3, ''),
    whole(72, 65),
    whole(73, 0),
    real(40, 0),
  ];
  const layer = (h: string, name: string, colour: number): Group[] => [
    ...record('LAYER', h, 'AcDbLayerTableRecord', name),
    whole(62, colour),
    token(6, 'Continuous'),
    whole(370, -3),
    token(390, PLOT_STYLE),
  ];
  const rows = [{ name: '0', colour: 7 }, ...layers];
  return section(
    'TABLES',
    ...table('VPORT', 1, [], viewport(box)),
    ...table(
      'LTYPE',
      3,
      [],
      [...lineType('14', 'ByBlock'), ...lineType('15', 'ByLayer'), ...lineType('16', 'Continuous')],
    ),
    ...table(
      'LAYER',
      rows.length,
      [],
      rows.flatMap((r, i) => layer((0x30 + i).toString(16).toUpperCase(), r.name, r.colour)),
    ),
    ...table(
      'STYLE',
      1,
      [],
      [
        ...record('STYLE', '18', 'AcDbTextStyleTableRecord', 'Standard'),
        real(40, 0),
        real(41, 1),
        real(50, 0),
        whole(71, 0),
        real(42, 2.5),
        token(3, 'txt'),
        token(4, ''),
      ],
    ),
    ...table('VIEW', 0, [], []),
    ...table('UCS', 0, [], []),
    ...table('APPID', 1, [], record('APPID', '19', 'AcDbRegAppTableRecord', 'ACAD')),
    ...table(
      'DIMSTYLE',
      1,
      [token(100, 'AcDbDimStyleTable')],
      record('DIMSTYLE', '1A', 'AcDbDimStyleTableRecord', 'Standard'),
    ),
    ...table(
      'BLOCK_RECORD',
      2,
      [],
      [
        ...record('BLOCK_RECORD', MODEL_SPACE, 'AcDbBlockTableRecord', '*Model_Space', [
          token(340, MODEL_LAYOUT),
        ]),
        ...record('BLOCK_RECORD', PAPER_SPACE, 'AcDbBlockTableRecord', '*Paper_Space', [
          token(340, PAPER_LAYOUT),
        ]),
      ],
    ),
  );
};

const table = (name: keyof typeof TABLE, count: number, extra: Group[], rows: Group[]): Group[] => [
  token(0, 'TABLE'),
  token(2, name),
  token(5, TABLE[name]),
  token(330, '0'),
  token(100, 'AcDbSymbolTable'),
  whole(70, count),
  ...extra,
  ...rows,
  token(0, 'ENDTAB'),
];

const record = (
  type: keyof typeof TABLE,
  handle: string,
  kind: string,
  name: string,
  tail?: Group[],
): Group[] => [
  token(0, type),
  token(type === 'DIMSTYLE' ? 105 : 5, handle),
  token(330, TABLE[type]),
  token(100, 'AcDbSymbolTableRecord'),
  token(100, kind),
  token(2, name),
  ...(tail ?? [whole(70, 0)]),
];

/** The window a reader opens with: the whole drawing and a little round it. */
const viewport = (box: PathBox): Group[] => {
  const { min: low, max: high } = box;
  const width = high[0] - low[0];
  const height = Math.max(high[1] - low[1], width / 2, 1) * 1.1;
  const pair = (code: number, x: number, y: number): Group[] => [real(code, x), real(code + 10, y)];
  return [
    ...record('VPORT', '13', 'AcDbViewportTableRecord', '*Active'),
    ...pair(10, 0, 0),
    ...pair(11, 1, 1),
    ...pair(12, (low[0] + high[0]) / 2, (low[1] + high[1]) / 2),
    ...pair(13, 0, 0),
    ...pair(14, 10, 10),
    ...pair(15, 10, 10),
    ...pair(16, 0, 0),
    real(36, 1),
    ...pair(17, 0, 0),
    real(37, 0),
    real(40, height),
    real(41, 1.6),
    real(42, 50),
    real(43, 0),
    real(44, 0),
    real(50, 0),
    real(51, 0),
    whole(71, 0),
    whole(72, 100),
    whole(73, 1),
    whole(74, 3),
    whole(75, 0),
    whole(76, 0),
    whole(77, 0),
    whole(78, 0),
  ];
};
