/** Numbers in [0, 1). */
export type Chance = () => number;

const JUNK = [
  '',
  '~',
  'null',
  '.nan',
  '.inf',
  '-.inf',
  '1e999',
  '-1',
  '0',
  '1e-300',
  '99999999999',
  '012',
  '0x1F',
  '1_000',
  '1,5',
  '5 qt',
  '5-1/2 in',
  '3 parsec',
  'unknown',
  'true',
  '[]',
  '{}',
  '[[]]',
  '{a: 1}',
  '*a',
  '&a 1',
  '!!js/function x',
  '<<',
  '"',
  "'",
  '|',
  '>',
  '- -',
  '? x',
  '%YAML 9',
  '---',
  '...',
  '\t',
  '\u0000',
  '\u202e',
  '\ud800',
  '@',
  '`',
  '__proto__',
  'constructor',
  '../../etc/passwd',
  '$(reboot)',
  '<script>',
  '%s%n',
  '140 mm mm',
  '1/0 in',
  '√2',
] as const;

/** A text with a few things changed by chance: letters, words, numbers, lines, brackets, depth, size. */
export const mutatedText = (text: string, next: Chance): string => {
  let lines = text.split('\n');
  const below = (count: number): number => Math.floor(next() * count);
  const pick = <T>(from: readonly T[]): T => from[below(from.length)] as T;
  const changes = 1 + below(4);
  for (let change = 0; change < changes; change++) {
    const at = below(lines.length);
    const line = lines[at] ?? '';
    const words = line.split(/([\s,:[\]{}]+)/);
    const column = below(line.length + 1);
    const put = (...instead: readonly string[]): void => {
      lines = [...lines.slice(0, at), ...instead, ...lines.slice(at + 1)];
    };
    const ways: readonly (() => void)[] = [
      () => put(),
      () => put(line, line),
      () => put(line.slice(0, column) + pick(JUNK) + line.slice(column)),
      () => put(line.slice(0, column) + line.slice(column + 1 + below(6))),
      () => {
        words[below(words.length)] = pick(JUNK);
        put(words.join(''));
      },
      () => put(line.replace(/-?\d+(\.\d+)?/, () => String((next() - 0.3) * 10 ** below(9)))),
      () => put(line.replace(/(\w+):/, (_, key: string) => `${key.slice(1)}${key.slice(0, 1)}:`)),
      () => put(`${' '.repeat(below(6))}${line}`),
      () => put(`${line.slice(0, column)}${'[{'.repeat(1 + below(400))}${line.slice(column)}`),
      () => put(line, pick(lines), pick(lines)),
      () => {
        lines = lines.slice(0, at);
      },
      () => put(line.slice(0, column) + pick(JUNK).repeat(1 + below(3000)) + line.slice(column)),
    ];
    pick(ways)();
  }
  return lines.join('\n');
};
