export { loadUnits } from './any-unit.js';
export { nearestWord } from './nearest.js';
export { type Read, type Refused, readQuantity } from './quantity.js';
export {
  commonUnits,
  findUnit,
  fromInside,
  type KindWords,
  kindWords,
  type QuantityKind,
  toInside,
  type Unit,
} from './unit.js';
