import { type Group, token } from './dxf-group.js';

// Handles of everything a reader expects to find around the entities; fixed, so that equal drawings are
// equal files. Tables 1–9, their rows and the objects after them.
export const TABLE = {
  VPORT: '1',
  LTYPE: '2',
  LAYER: '3',
  STYLE: '4',
  VIEW: '5',
  UCS: '6',
  APPID: '7',
  DIMSTYLE: '8',
  BLOCK_RECORD: '9',
};
export const MODEL_SPACE = '20';
export const PAPER_SPACE = '24';
export const MODEL_LAYOUT = '23';
export const PAPER_LAYOUT = '27';
export const ROOT = 'A';
export const GROUPS = 'B';
export const LAYOUTS = 'C';
export const LINE_STYLES = 'D';
export const PLOT_SETTINGS = 'E';
export const PLOT_STYLES = 'F';
export const PLOT_STYLE = '10';
export const MULTILINE = '11';
export const FIRST_FREE_HANDLE = 0x100;

export const section = (name: string, ...content: Group[]): Group[] => [
  token(0, 'SECTION'),
  token(2, name),
  ...content,
  token(0, 'ENDSEC'),
];
