import { keyText, type Problem } from 'pan-core';
import { plain } from './plain.js';
import { hang } from './wrap.js';

/** What was typed on the command line, or stood in the way of writing, has no place in the design file. */
const ELSEWHERE: ReadonlySet<Problem['code']> = new Set([
  'input-option',
  'file-write',
  'file-edited',
  'internal',
]);

const placeOf = (problem: Problem, file: string): string => {
  if (file === '' || ELSEWHERE.has(problem.code)) return '';
  const at = [problem.line, problem.column].filter((n) => n !== undefined).join(':');
  return at === '' ? file : `${file}:${at}`;
};

const expectation = ({ expected, found, message }: Problem): string => {
  const parts: string[] = [];
  if (expected !== undefined && !message.includes(expected)) parts.push(`expected ${plain(expected, 200)}`);
  if (found !== undefined && !message.includes(found)) parts.push(`found ${plain(found, 60)}`);
  const text = parts.join(', ');
  return text === '' ? '' : `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
};

/** The sentence without the place that the reader put before it. */
const sentenceOf = ({ message }: Problem, place: string, file: string): string =>
  [place, file].reduce(
    (text, lead) => (lead !== '' && text.startsWith(`${lead}: `) ? text.slice(lead.length + 2) : text),
    message,
  );

/** One problem: its place and key, what is wrong, and on the next line what to do. */
const problemLines = (problem: Problem, file: string, width: number): string[] => {
  const place = placeOf(problem, file);
  const sentence = plain(sentenceOf(problem, place, file));
  const key = plain(keyText(problem.path), 120);
  const named = sentence.startsWith(key) ? '' : key;
  const lead = [plain(place), named].filter((t) => t !== '');
  const what = [sentence, expectation(problem)].filter((t) => t !== '').join(' ');
  const first = `${lead.map((t) => `${t}: `).join('')}${what}`;
  return [
    ...hang('', first, width),
    ...(problem.advice === undefined ? [] : hang('  > ', plain(problem.advice), width)),
  ];
};

/** Every problem, each under the place where an editor can jump to it. `file` is empty when none was read. */
export const problemsText = (problems: readonly Problem[], file: string, width: number): string =>
  `${problems.flatMap((problem) => problemLines(problem, file, width)).join('\n')}\n`;

/** The same for a program. */
export const problemsData = (problems: readonly Problem[], file: string): object => ({
  errors: problems.map((problem) => ({
    code: problem.code,
    file: file === '' || ELSEWHERE.has(problem.code) ? null : file,
    line: problem.line ?? null,
    column: problem.column ?? null,
    key: keyText(problem.path),
    message: sentenceOf(problem, placeOf(problem, file), file),
    expected: problem.expected ?? null,
    found: problem.found ?? null,
    value: problem.value ?? null,
    limit: problem.limit ?? null,
    unit: problem.unit ?? null,
    advice: problem.advice ?? null,
  })),
});
