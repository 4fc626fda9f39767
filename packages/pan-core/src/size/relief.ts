import type { Pose } from './conflict.js';
import { valuesOf } from './freedom.js';
import { choosable } from './freedom-list.js';
import { severityAt } from './problem.js';
import type { SizeRequest } from './request.js';
import { bestDesign, sideEffort } from './search.js';
import type { Search, Trial } from './trial.js';

/** One way out of a contradiction: what gives, and how far it must. */
export interface Relief {
  readonly kind: 'limit' | 'g' | 'value';
  /** The check, the cases, or the value of the design that gives. */
  readonly what: string;
  /** Where it must go, in `unit`; for the cases, the share of their g that holds. */
  readonly to: number;
  readonly from: number;
  readonly unit: string;
}

/** How far the cases are eased at most, and how much a value of the design may be changed beyond its range. */
const LEAST_G = 0.3;
const MOST_OTHERS = 3;

/** What each check of a contradiction would have to give with all others holding, then what else would lift it. */
export function* reliefsOf(
  pose: Pose,
  request: SizeRequest,
  conflict: readonly string[],
  tell: (reliefs: readonly Relief[]) => void,
): Search<readonly Relief[]> {
  const found: Relief[] = [];
  const add = (relief: Relief): void => {
    found.push(relief);
    tell([...found]);
  };
  for (const id of conflict) {
    const eased = yield* solve(pose, { ...request, ease: id });
    const row = eased?.verdict.rows.find((one) => one.id === id);
    if (row?.value == null || row.limit === null) continue;
    // What would have to stand inside the pan is no way out.
    if (id.startsWith('clear_') && row.value < 0) continue;
    add({ kind: 'limit', what: id, to: row.value, from: row.limit, unit: row.unit });
  }
  if (conflict.some((id) => id.startsWith('mouth_') || id.startsWith('draw_'))) {
    const asked: SizeRequest = { ...request, goal: 'most g', severity: [LEAST_G, 1] };
    const gentler = yield* solve(pose, asked);
    if (gentler !== null) {
      add({ kind: 'g', what: 'cases', to: severityAt(pose(asked), gentler.at), from: 1, unit: '' });
    }
  }
  const { raw, design, freedoms } = pose(request);
  const others = choosable(raw, design).filter(
    ({ name }) => !freedoms.some((one) => one.name === name) && isHelp(name),
  );
  for (const { name } of others.slice(0, MOST_OTHERS)) {
    const asked: SizeRequest = {
      ...request,
      goal: 'least change',
      free: [...freedoms.map(wishOf), { what: name, from: null, to: null, step: null }],
    };
    const changed = yield* solve(pose, asked);
    if (changed === null) continue;
    const problem = pose(asked);
    const at = problem.freedoms.findIndex((one) => one.name === name);
    const freedom = problem.freedoms[at];
    const value = valuesOf(problem.freedoms, changed.at)[at];
    if (freedom === undefined || value === undefined) continue;
    const scale = freedom.kind === 'volume' ? 1e6 : 1;
    add({
      kind: 'value',
      what: name,
      to: value / scale,
      from: freedom.now / scale,
      unit: freedom.kind === 'volume' ? 'L' : 'mm',
    });
  }
  return found;
}

const wishOf = ({ name, from, to, step }: { name: string; from: number; to: number; step: number }) => ({
  what: name,
  from,
  to,
  step,
});

/** What a builder would change outside the ranges to get out of a corner. */
const isHelp = (name: string): boolean =>
  ['fill', 'sump depth', 'width', 'step'].includes(name) || name.endsWith(' reach') || name.endsWith(' rear');

function* solve(pose: Pose, request: SizeRequest): Search<Trial | null> {
  const problem = pose(request);
  const { best } = yield* bestDesign(problem, sideEffort(problem.freedoms.length));
  return best.verdict.miss === 0 ? best : null;
}
