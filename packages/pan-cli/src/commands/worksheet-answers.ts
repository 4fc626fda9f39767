import { PanError, type WorksheetRow } from 'pan-core';
import { parseDocument } from 'yaml';
import { readSource } from '../read/source.js';

/** Answers by their key as the worksheet has it, things of a list numbered from 1: `chassis.obstacles[2].box`. */
export type Answers = ReadonlyMap<string, unknown>;

/** As many things as a list of the design file holds. */
const MOST_THINGS = 100;
const LINE = 'Write lines such as engine.rail.length: 690 or chassis.obstacles[1].name: crossmember';

export const answerRefusal = (message: string, advice: string): PanError =>
  new PanError({ code: 'input-option', path: [], message, advice });

/** A key without the numbers of its things. */
const plainKey = (key: string): string => key.replace(/\[\d+\]/g, '[]');

const checkKey = (key: string, rows: readonly WorksheetRow[], where: string): void => {
  const counts = [...key.matchAll(/\[(\d+)\]/g)].map(([, count]) => Number(count));
  if (!rows.some((row) => row.key === plainKey(key)) || key.includes('[]'))
    throw answerRefusal(
      `${where}: ${key.slice(0, 60)} is no row of the worksheet.`,
      'Write the key as the worksheet has it in small letters, a thing of a list with its number: chassis.obstacles[1].name',
    );
  if (counts.some((count) => count < 1 || count > MOST_THINGS))
    throw answerRefusal(
      `${where}: ${key.slice(0, 60)} counts from 1, to ${MOST_THINGS} at most.`,
      'Number the things of a list 1, 2, 3.',
    );
};

/** Answers from a file of lines such as `engine.rail.length: 690`. */
export const fileAnswers = async (file: string, rows: readonly WorksheetRow[]): Promise<Answers> => {
  const document = parseDocument(await readSource(file), { prettyErrors: false, stringKeys: true });
  const raw: unknown = document.errors.length > 0 ? null : document.toJS({ maxAliasCount: 0 });
  if (typeof raw !== 'object' || raw === null || Array.isArray(raw))
    throw answerRefusal(`--answers ${file} holds no lines of key: value.`, LINE);
  const answers = new Map(Object.entries(raw));
  for (const key of answers.keys()) checkKey(key, rows, `--answers ${file}`);
  return answers;
};

/** Answers from `--set key=value`, one a line. */
export const setAnswers = (given: string, rows: readonly WorksheetRow[]): Answers => {
  const answers = new Map<string, unknown>();
  for (const one of given.split('\n')) {
    const [, key, value] = /^([^=\s]+)=(.+)$/.exec(one.trim()) ?? [];
    if (key === undefined || value === undefined)
      throw answerRefusal(
        `--set ${one.slice(0, 60)} is no key=value.`,
        'For example: --set engine.rail.length=690',
      );
    checkKey(key, rows, '--set');
    if (answers.has(key)) throw answerRefusal(`--set gives ${key} twice.`, 'Give it once.');
    const row = rows.find((each) => each.key === plainKey(key));
    answers.set(key, typedAnswer(value, row as WorksheetRow));
  }
  return answers;
};

const PLAIN = /^[+-]?(\d+\.?\d*|\.\d+)$/;

/** What was typed; numbers with nothing but spaces between go into the boxes of the row one after another. */
export const typedAnswer = (typed: string, { boxes, tick, takes }: WorksheetRow): unknown => {
  const parts = typed.trim().split(/[\s,;]+/);
  const listed = takes.startsWith('list of length');
  if (
    !tick &&
    boxes.length > 1 &&
    (listed || parts.length === boxes.length) &&
    parts.every((one) => PLAIN.test(one))
  ) {
    const numbers = parts.map(Number);
    return takes.startsWith('[[') ? [numbers.slice(0, 3), numbers.slice(3)] : numbers;
  }
  const document = parseDocument(typed, { prettyErrors: false });
  return document.errors.length > 0 ? typed : document.toJS({ maxAliasCount: 0 });
};

type Tree = { [key: string]: Tree | unknown } | (Tree | unknown)[];

/** The lists among the answers, each whole under the path it has in the design file. */
export const answerLists = (answers: Answers): ReadonlyMap<string, unknown> => {
  const lists = new Map<string, unknown[]>();
  for (const [key, value] of answers) {
    if (!key.includes('[')) continue;
    const root = key.slice(0, key.indexOf('['));
    const path = [...key.slice(root.length).matchAll(/\[(\d+)\]|[^.[\]]+/g)].map(([word, count]) =>
      count === undefined ? word : Number(count) - 1,
    );
    const list = lists.get(root) ?? [];
    lists.set(root, list);
    put(list, path, value);
  }
  for (const [root, list] of lists) refuseGaps(root, list);
  return lists;
};

const put = (into: Tree, [step, ...rest]: readonly (string | number)[], value: unknown): void => {
  const at = into as Record<string | number, unknown>;
  if (step === undefined) return;
  if (rest.length === 0) at[step] = value;
  else {
    at[step] ??= typeof rest[0] === 'number' ? [] : {};
    put(at[step] as Tree, rest, value);
  }
};

const refuseGaps = (root: string, list: readonly unknown[]): void => {
  const gap = Array.from(list).indexOf(undefined);
  if (gap >= 0)
    throw answerRefusal(
      `${root}[${list.length}] is answered and ${root}[${gap + 1}] is not.`,
      'Number the things of a list 1, 2, 3 without a gap.',
    );
};

/** Answers as lines for a file that --answers reads. */
export const answerLines = (answers: Answers): string =>
  [...answers].map(([key, value]) => `${key}: ${JSON.stringify(value)}\n`).join('');
