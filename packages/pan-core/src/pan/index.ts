export { type Corner, floorProfile, type Profile } from './profile.js';
export type { OuterSolid, Owner, Panel } from './panel.js';
export type { Plate, PlateOpening } from './plate.js';
