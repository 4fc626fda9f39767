export { type Fault, foundText, keyText, type Place, placeText, problemOf } from './fault.js';
export {
  checked,
  type Description,
  type Field,
  optional,
  orUnknown,
  type Refusal,
  type Report,
  refused,
} from './field.js';
export { choice, either, isKeys, isList, isScalar, list, section, tuple, type ValueOf } from './group.js';
export { count, flag, plainNumber, quantity, type Range, type Reading, text } from './value.js';
