import {
  type Batch,
  editsOf,
  PanError,
  posed,
  type SizeReport,
  type StoppableSearch,
  sizeReport,
  type Verdict,
} from 'pan-core';
import { editedDesign } from '../read/edited-design.js';
import { designParts, readDesignText } from '../read/index.js';
import { tradeSvg } from '../report/trade-svg.js';
import { createProgress } from '../terminal/progress.js';
import { sizeCourse } from '../terminal/size-course.js';
import { sizeScreen } from '../terminal/size-screen.js';
import { holdStop, refuseStandingFile, writeNewFile } from '../write/index.js';
import type { Run } from './command.js';
import { readSizeWish } from './size-request.js';
import { openSizeWorkers, type SizeWorkers } from './size-workers.js';

const drive = async (
  search: StoppableSearch<SizeReport>,
  workers: SizeWorkers,
  see: (batch: Batch, verdicts: readonly Verdict[]) => void,
): Promise<SizeReport> => {
  let step = search.next();
  while (step.done !== true) {
    const { request, questions } = step.value;
    const verdicts = await workers.ask(questions.map((question) => ({ request, question })));
    see(
      step.value,
      verdicts.flatMap((verdict) => verdict ?? []),
    );
    step = search.next(verdicts);
  }
  return step.value;
};

/** Aborted by the first Ctrl-C, or after some seconds; a second Ctrl-C ends the program as usual. */
const stopSignal = (seconds: number | null): { readonly signal: AbortSignal; readonly over: () => void } => {
  const stop = new AbortController();
  const abort = (): void => stop.abort();
  process.once('SIGINT', abort);
  const timer = seconds === null ? null : setTimeout(abort, 1000 * seconds);
  return {
    signal: stop.signal,
    over: () => {
      process.off('SIGINT', abort);
      if (timer !== null) clearTimeout(timer);
    },
  };
};

/**
 * Sizes what is left free and writes the design that passes: 1 when none does. Stopped on the way, it does the
 * same with the best so far.
 */
export const size: Run = async (given, screen) => {
  const named = (name: string): string | null => {
    const typed = given.options[name];
    return typeof typed === 'string' ? typed : null;
  };
  const [out, svg] = [named('out'), named('svg')];
  const replace = given.options.replace === true;
  const wish = await readSizeWish(given, screen.units);
  if (svg !== null && !wish.trade) {
    throw new PanError({
      code: 'input-option',
      path: [],
      message: '--svg draws the trade, and --trade was not given.',
      advice: 'Give --trade too.',
    });
  }
  for (const file of [out, svg]) if (file !== null) refuseStandingFile(file, replace);
  const { text, raw, beside } = await designParts(given.file);
  const progress = createProgress(screen.tell, process.stderr.isTTY === true);
  const pose = posed(raw, beside);
  pose(wish.request);
  const stop = stopSignal(wish.seconds);
  const workers = openSizeWorkers({ file: raw, beside }, stop.signal);
  const course = sizeCourse(pose(wish.request), screen);
  const report = await drive(sizeReport(pose, wish), workers, (batch, verdicts) => {
    progress.say(course(batch, verdicts));
  }).finally(() => {
    stop.over();
    return workers.close();
  });
  progress.clear();
  const written = report.changes.length === 0 ? text : editedDesign(text, editsOf(report.changes));
  await readDesignText(written, given.file);
  await holdStop(() => {
    if (out !== null && report.passes) writeNewFile(out, written, replace);
    if (svg !== null) writeNewFile(svg, tradeSvg(report.trade), replace);
  });
  const saved = out !== null && report.passes ? out : null;
  screen.write(
    screen.json ? `${JSON.stringify(sizeData(report, saved, svg), null, 2)}\n` : sizeScreen(report, screen),
  );
  if (saved !== null) screen.tell(`Wrote ${saved}.\n`);
  else if (out !== null) screen.tell(`${out} was not written: no design was found that passes.\n`);
  if (svg !== null) screen.tell(`Wrote ${svg}.\n`);
  return report.passes ? 0 : 1;
};

/** The report as a program reads it; the whole check is what `pan check` says of the written file. */
const sizeData = (
  { check, data: _, trade, changes, ...report }: SizeReport,
  out: string | null,
  svg: string | null,
) => ({
  ...report,
  changes: changes.map(({ key, before, after }) => ({ key, before, after })),
  trade: trade.map(({ data: __, ...design }) => design),
  checks:
    check?.checks.map(({ id, status, value, limit, unit }) => ({ id, status, value, limit, unit })) ?? [],
  out,
  svg,
});
