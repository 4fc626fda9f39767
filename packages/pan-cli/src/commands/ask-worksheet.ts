import { input } from '@inquirer/prompts';
import type { WorksheetPart, WorksheetRow } from 'pan-core';
import { type Answers, typedAnswer } from './worksheet-answers.js';

type Ask = (about: string, key: string) => Promise<string>;

/** What is wanted, and in what: a unit, the words to choose from, or the numbers in their order. */
const askedFor = ({ about, boxes, columns, tick, takes }: WorksheetRow): string => {
  if (tick) return `${about}: ${boxes.join(' | ')}`;
  if (takes.startsWith('list of length')) return `${about}: spaces between`;
  const what = boxes.length > 0 ? boxes : columns.map((one) => `${one} …`);
  const said = what.filter((one) => one !== '' && one !== 'words').join(' ');
  return said === '' ? about : `${about}: ${said}`;
};

/** The list that a row belongs to, `chassis.obstacles[]`, or nothing. */
const listOf = (key: string): string => /^.*\[\]/.exec(key)?.[0] ?? '';

/**
 * Asks every row that has no answer yet, in the order of the worksheet. The first row of a list is asked again
 * for another thing until Enter alone ends it; things that every page of a list has in common are asked on each.
 */
export const askRows = async (
  parts: readonly WorksheetPart[],
  given: Answers,
  tell: (text: string) => void,
  ask: Ask = (about, key) => input({ message: `${about} (${key})` }),
): Promise<Answers> => {
  const answers = new Map(given);
  const counts = countsOf(given);
  const every = parts.flatMap(({ rows }) => rows.filter(({ each }) => each));
  const one = async (row: WorksheetRow, key: string, about = askedFor(row)): Promise<boolean> => {
    if (answers.has(key)) return true;
    const typed = (await ask(about, key)).trim();
    if (typed !== '') answers.set(key, typedAnswer(typed, row));
    return typed !== '';
  };
  const things = async (rows: readonly WorksheetRow[], list: string, under: string): Promise<void> => {
    for (;;) {
      const count = (counts.get(under) ?? 0) + 1;
      const thing = `${under}[${count}]`;
      const [first, ...rest] = rows.filter(({ key }) => listOf(key) === list);
      if (first === undefined) return;
      const about = count === 1 ? askedFor(first) : `another? ${askedFor(first)}; Enter alone goes on`;
      if (!(await one(first, thing + first.key.slice(list.length), about))) return;
      counts.set(under, count);
      const common = first.again ? every.filter(({ key }) => listOf(key) === list) : [];
      for (const row of [...rest, ...common]) await one(row, thing + row.key.slice(list.length));
      const inner = rows.find(({ key }) => key.startsWith(list) && listOf(key) !== list);
      if (inner !== undefined) {
        const of = listOf(inner.key);
        await things(rows, of, thing + of.slice(list.length, -2));
      }
    }
  };
  for (const { title, rows } of parts) {
    tell(`\n${title}\n`);
    const done = new Set<string>();
    for (const row of rows) {
      const [list = ''] = /^[^[]*\[\]/.exec(row.key) ?? [];
      if (list === '') await one(row, row.key);
      else if (!done.has(list)) {
        done.add(list);
        const own = rows.filter(({ key }) => key.startsWith(list));
        await things(own, list, list.slice(0, -2));
      }
    }
  }
  return answers;
};

/** How many things of each list have answers already. */
const countsOf = (given: Answers): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const key of given.keys())
    for (const { index, 1: count } of key.matchAll(/\[(\d+)\]/g)) {
      const under = key.slice(0, index);
      counts.set(under, Math.max(counts.get(under) ?? 0, Number(count)));
    }
  return counts;
};
