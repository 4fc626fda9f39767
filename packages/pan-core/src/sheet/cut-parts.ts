import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Panel, Plate, Profile } from '../pan/index.js';
import { baffleParts } from './baffle-plate.js';
import { bellyParts } from './belly.js';
import { bendRule } from './bend-rule.js';
import type { CutJob } from './cut-job.js';
import { flangeParts } from './flange.js';
import { notchParts } from './notch-plate.js';
import type { Part } from './part.js';
import { sideParts } from './side-plate.js';
import { notchCutter } from './solid.js';
import { splitParts } from './split-part.js';
import { stayParts } from './stay-part.js';
import { treeParts } from './tree-part.js';
import { wingParts } from './wing.js';

/**
 * Every flat part of a pan, in the order a shop would cut them.
 *
 * @param plates the baffles fitted to the pan's inside
 * @param panels the pan's inside faces; those owned by a notch become plates
 * @throws PanError `shape-fold`, `sheet-cut` or `input-range` for what cannot be folded or cut
 */
export const cutParts = (
  design: Design,
  profile: Profile,
  plates: readonly Plate[],
  panels: readonly Panel[],
): readonly Part[] => {
  const job: CutJob = {
    design,
    profile,
    rule: bendRule(design),
    notches: design.pan.notches.map(notchCutter),
    plates,
  };
  return freeze(
    ownNames([
      ...splitParts(
        design,
        ownNames([
          ...(asksForTrees(design) ? treeParts(job) : usualParts(job, panels)),
          ...baffleParts(design, plates),
        ]),
      ),
      ...stayParts(design, profile),
      ...flangeParts(design, profile),
    ]),
  );
};

/** Whether the design says of its own which edges fold. */
export const asksForTrees = ({ pan: { joints } }: Design): boolean =>
  joints.fold.length > 0 || joints.weld.length > 0;

const usualParts = (job: CutJob, panels: readonly Panel[]): readonly Part[] => [
  ...bellyParts(job),
  ...sideParts(job, 'left'),
  ...sideParts(job, 'right'),
  ...job.design.pan.wings.flatMap((wing) => wingParts(job, wing)),
  ...notchParts(job.design, panels),
];

/** A name is a file's name too: a part that would share one with an earlier part gets a number. */
const ownNames = (parts: readonly Part[]): readonly Part[] => {
  const used = new Set<string>();
  return parts.map((part) => {
    let name = part.name;
    for (let n = 2; used.has(name.toLowerCase()); n++) name = `${part.name} (${n})`;
    used.add(name.toLowerCase());
    return name === part.name ? part : { ...part, name };
  });
};
