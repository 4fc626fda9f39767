import type { Design } from '../design/index.js';
import type { Plate, Profile } from '../pan/index.js';
import type { BendRule } from './bend-rule.js';
import type { Cutter } from './cutter.js';

/** What every part of one pan is cut from. */
export interface CutJob {
  readonly design: Design;
  readonly profile: Profile;
  readonly rule: BendRule;
  readonly notches: readonly Cutter[];
  readonly plates: readonly Plate[];
}
