import { type Design, slug } from '../design/index.js';
import { type BaffleLayout, baffleLayouts } from './baffle-layout.js';
import type { Pose } from './conflict.js';
import type { Found } from './polish.js';
import type { SizeProblem } from './problem.js';
import type { SizeRequest } from './request.js';
import { sizedDesign } from './search.js';
import type { Search } from './trial.js';

/** A layout tried, and how it came out. */
export interface LayoutTried {
  readonly words: string;
  readonly pieces: number;
  readonly holds: boolean;
  /** Checks it misses at its best, worst first. */
  readonly missed: readonly string[];
}

export interface BafflePlan {
  readonly tried: readonly LayoutTried[];
  /** The fewest pieces that hold, with the problem and the answer; null when none of the layouts does. */
  readonly chosen: {
    readonly layout: BaffleLayout;
    readonly problem: SizeProblem;
    readonly found: Found;
  } | null;
}

/**
 * For a pan as it stands, the fewest baffles that hold every case, each for its time, and where they go. All
 * layouts of one count are tried, and the one with least metal is taken.
 *
 * @param tell given the plan as it stands after each layout
 */
export function* bafflePlan(
  pose: Pose,
  request: SizeRequest,
  design: Design,
  tell: (plan: BafflePlan) => void,
): Search<BafflePlan> {
  const tried: LayoutTried[] = [];
  let chosen: BafflePlan['chosen'] = null;
  const draws = design.manoeuvres.map(({ name }) => `draw_${slug(name)}`);
  for (const layout of baffleLayouts(design)) {
    if (chosen !== null && layout.pieces > chosen.layout.pieces) break;
    const problem = pose({
      ...request,
      goal: 'least metal',
      start: [...request.start, { path: ['baffles'], value: layout.baffles }],
      free:
        layout.free.length > 0
          ? layout.free
          : [{ what: 'fill', from: design.oil.fill, to: design.oil.fill, step: null }],
      hold: [...request.hold, ...draws],
    });
    const found = yield* sizedDesign(problem);
    const { verdict } = found.best;
    const missed = verdict.rows.filter((row) => row.missed).sort((a, b) => a.margin - b.margin);
    tried.push({
      words: layout.words,
      pieces: layout.pieces,
      holds: verdict.miss === 0,
      missed: missed.map(({ id }) => id),
    });
    if (verdict.miss === 0 && (chosen === null || verdict.cost < chosen.found.best.verdict.cost)) {
      chosen = { layout, problem, found };
    }
    tell({ tried: [...tried], chosen });
  }
  return { tried, chosen };
}
