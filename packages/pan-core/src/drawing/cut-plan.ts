import type { CheckReport } from '../check/index.js';
import type { Design } from '../design/index.js';
import { freeze } from '../numeric/index.js';
import type { Part } from '../sheet/index.js';
import { cautionsFor, SAYINGS, type Seam } from '../weld/index.js';
import { oneLine } from './one-line.js';
import { notReady } from './part-words.js';
import { safeNames } from './safe-name.js';

/** A part with the name its files carry. */
export interface NamedPart {
  readonly part: Part;
  readonly file: string;
}

/** Everything the files of a cut set speak of, gathered once. */
export interface CutPlan {
  readonly design: Design;
  readonly report: CheckReport;
  readonly title: string;
  readonly parts: readonly NamedPart[];
  readonly seams: readonly Seam[];
  /** Ids of the checks that fail or cannot be told. */
  readonly open: readonly string[];
  /** "NOT READY TO CUT: …", or null. */
  readonly warning: string | null;
  /** Caution texts for cutting and welding the pan's own sheet, each once. */
  readonly cautions: readonly string[];
}

export const cutPlan = (
  design: Design,
  parts: readonly Part[],
  seams: readonly Seam[],
  report: CheckReport,
): CutPlan => {
  const files = safeNames(parts.map((part) => part.name));
  const open = report.checks.filter((c) => c.status === 'fail' || c.status === 'unknown').map((c) => c.id);
  const distinct = [...new Set(open)];
  return freeze({
    design,
    report,
    title: oneLine(design.title, 100),
    parts: parts.map((part, i) => ({ part, file: files[i] as string })),
    seams,
    open: distinct,
    warning: notReady(distinct),
    cautions: materialCautions(design.pan.sheet.material),
  });
};

/** Caution texts for both cutting and welding a material, each once. */
export const materialCautions = (material: string): readonly string[] => [
  ...new Set([...cautionsFor(material, 'cut'), ...cautionsFor(material, 'weld')].map((c) => c.text)),
];

/** Lines at the head of every text of a set: the warning if there is one, then the sentence on proving it. */
export const headLines = (plan: CutPlan, what: string): readonly string[] => [
  ...(plan.warning === null ? [] : [plan.warning, '']),
  `${plan.title}: ${what}`,
  '',
  `${SAYINGS.cut}.`,
  '',
];
