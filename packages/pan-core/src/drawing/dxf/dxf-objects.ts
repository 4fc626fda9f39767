import type { PathBox } from '../../geometry/index.js';
import { type Group, real, token, whole } from './dxf-group.js';
import {
  GROUPS,
  LAYOUTS,
  LINE_STYLES,
  MODEL_LAYOUT,
  MODEL_SPACE,
  MULTILINE,
  PAPER_LAYOUT,
  PAPER_SPACE,
  PLOT_SETTINGS,
  PLOT_STYLE,
  PLOT_STYLES,
  ROOT,
  section,
} from './dxf-handles.js';

export const classSection = (): Group[] => {
  const row = (name: string, cpp: string): Group[] => [
    token(0, 'CLASS'),
    token(1, name),
    token(2, cpp),
    token(3, 'ObjectDBX Classes'),
    whole(90, 0),
    whole(280, 0),
    whole(281, 0),
  ];
  return section(
    'CLASSES',
    ...row('ACDBDICTIONARYWDFLT', 'AcDbDictionaryWithDefault'),
    ...row('ACDBPLACEHOLDER', 'AcDbPlaceHolder'),
    ...row('LAYOUT', 'AcDbLayout'),
  );
};

export const blockSection = (): Group[] => {
  const block = (name: string, record: string, begin: string, end: string): Group[] => [
    token(0, 'BLOCK'),
    token(5, begin),
    token(330, record),
    token(100, 'AcDbEntity'),
    token(8, '0'),
    token(100, 'AcDbBlockBegin'),
    token(2, name),
    whole(70, 0),
    real(10, 0),
    real(20, 0),
    real(30, 0),
    token(3, name),
    token(1, ''),
    token(0, 'ENDBLK'),
    token(5, end),
    token(330, record),
    token(100, 'AcDbEntity'),
    token(8, '0'),
    token(100, 'AcDbBlockEnd'),
  ];
  return section(
    'BLOCKS',
    ...block('*Model_Space', MODEL_SPACE, '21', '22'),
    ...block('*Paper_Space', PAPER_SPACE, '25', '26'),
  );
};

export const objectSection = (box: PathBox): Group[] => {
  const dictionary = (
    handle: string,
    owner: string,
    entries: readonly (readonly [string, string])[],
  ): Group[] => [
    token(0, 'DICTIONARY'),
    token(5, handle),
    token(330, owner),
    token(100, 'AcDbDictionary'),
    whole(281, 1),
    ...entries.flatMap(([name, target]) => [token(3, name), token(350, target)]),
  ];
  return section(
    'OBJECTS',
    ...dictionary(ROOT, '0', [
      ['ACAD_GROUP', GROUPS],
      ['ACAD_LAYOUT', LAYOUTS],
      ['ACAD_MLINESTYLE', LINE_STYLES],
      ['ACAD_PLOTSETTINGS', PLOT_SETTINGS],
      ['ACAD_PLOTSTYLENAME', PLOT_STYLES],
    ]),
    ...dictionary(GROUPS, ROOT, []),
    ...dictionary(LAYOUTS, ROOT, [
      ['Model', MODEL_LAYOUT],
      ['Layout1', PAPER_LAYOUT],
    ]),
    ...dictionary(LINE_STYLES, ROOT, [['Standard', MULTILINE]]),
    ...dictionary(PLOT_SETTINGS, ROOT, []),
    token(0, 'ACDBDICTIONARYWDFLT'),
    token(5, PLOT_STYLES),
    token(330, ROOT),
    token(100, 'AcDbDictionary'),
    whole(281, 1),
    token(3, 'Normal'),
    token(350, PLOT_STYLE),
    token(100, 'AcDbDictionaryWithDefault'),
    token(340, PLOT_STYLE),
    token(0, 'ACDBPLACEHOLDER'),
    token(5, PLOT_STYLE),
    token(330, PLOT_STYLES),
    ...layout(MODEL_LAYOUT, 'Model', MODEL_SPACE, 0, box),
    ...layout(PAPER_LAYOUT, 'Layout1', PAPER_SPACE, 1, { min: [0, 0], max: [420, 297] }),
    token(0, 'MLINESTYLE'),
    token(5, MULTILINE),
    token(330, LINE_STYLES),
    token(100, 'AcDbMlineStyle'),
    token(2, 'Standard'),
    whole(70, 0),
    token(3, ''),
    whole(62, 256),
    real(51, 90),
    real(52, 90),
    whole(71, 2),
    real(49, 0.5),
    whole(62, 256),
    token(6, 'BYLAYER'),
    real(49, -0.5),
    whole(62, 256),
    token(6, 'BYLAYER'),
  );
};

const layout = (handle: string, name: string, record: string, order: number, box: PathBox): Group[] => {
  const { min: low, max: high } = box;
  const zero = (...codes: number[]): Group[] => codes.map((code) => real(code, 0));
  return [
    token(0, 'LAYOUT'),
    token(5, handle),
    token(330, LAYOUTS),
    token(100, 'AcDbPlotSettings'),
    token(1, ''),
    token(2, 'none_device'),
    token(4, ''),
    token(6, ''),
    ...zero(40, 41, 42, 43),
    real(44, 420),
    real(45, 297),
    ...zero(46, 47, 48, 49, 140, 141),
    real(142, 1),
    real(143, 1),
    whole(70, order === 0 ? 1712 : 688),
    whole(72, 1),
    whole(73, 0),
    whole(74, 5),
    token(7, ''),
    whole(75, 16),
    real(147, 1),
    ...zero(148, 149),
    token(100, 'AcDbLayout'),
    token(1, name),
    whole(70, 1),
    whole(71, order),
    ...zero(10, 20),
    real(11, 420),
    real(21, 297),
    ...zero(12, 22, 32),
    real(14, low[0]),
    real(24, low[1]),
    real(34, 0),
    real(15, high[0]),
    real(25, high[1]),
    real(35, 0),
    ...zero(146, 13, 23, 33),
    real(16, 1),
    ...zero(26, 36, 17),
    real(27, 1),
    real(37, 0),
    whole(76, 0),
    token(330, record),
  ];
};
