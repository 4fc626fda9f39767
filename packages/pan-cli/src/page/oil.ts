import { computed, type ReadonlySignal } from '@preact/signals';
import {
  type Design,
  type LevelReport,
  type Load,
  levelReportOf,
  type OilAnswer,
  type OilSystem,
  PanError,
  rampAnswer,
} from 'pan-core';

/** The oil at the load and fill that the controls stand at. */
export interface OilNow {
  readonly load: Load;
  readonly held: OilAnswer;
  readonly settled: OilAnswer;
  readonly report: LevelReport;
}

/** Oil at the controls' load, or why there is none. */
export type OilFound =
  | { readonly ok: true; readonly oil: OilNow }
  | { readonly ok: false; readonly why: string };

/** The oil after the load has come on slowly from rest; `grade` in degrees, `inPan` in L. */
export const oilAt = (
  design: Design,
  system: OilSystem,
  { forward, left, grade, inPan }: { forward: number; left: number; grade: number; inPan: number },
): OilFound => {
  const load = { forward, left, grade: (grade * Math.PI) / 180 };
  const volume = inPan * 1e6;
  try {
    const held = rampAnswer(system, volume, load, 'held');
    const settled = rampAnswer(system, volume, load, 'settled');
    return {
      ok: true,
      oil: { load, held, settled, report: levelReportOf(design, system, volume, { held, settled }) },
    };
  } catch (error) {
    if (error instanceof PanError) return { ok: false, why: error.message };
    throw error;
  }
};

/** The same, worked out again whenever a control moves. */
export const oilSignal = (
  design: Design,
  system: OilSystem,
  controls: Readonly<Record<'forward' | 'left' | 'grade' | 'inPan', ReadonlySignal<number>>>,
): ReadonlySignal<OilFound> =>
  computed(() =>
    oilAt(design, system, {
      forward: controls.forward.value,
      left: controls.left.value,
      grade: controls.grade.value,
      inPan: controls.inPan.value,
    }),
  );
