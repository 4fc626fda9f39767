// Runs every command that writes in several time zones, languages and versions of node, twice in the first, and
// compares what they print and write, byte for byte. NODES names further programs, as in
// NODES=/opt/node22/bin/node:/opt/node24/bin/node. RECORD=1 keeps the tally. Exits 1 where bytes differ.
import { spawnSync } from 'node:child_process';
import { digestOf, HABITS, type Place, type Written } from '../hostile/same-bytes.js';
import { keepRecord } from '../run-record.js';

const pan = 'packages/pan-cli/dist/pan.js';
const example = (name: string): string => `packages/pan-cli/examples/${name}.yaml`;

const commands: readonly Written[] = [
  { name: 'check', args: () => ['check', example('demo'), '--json'] },
  { name: 'level', args: () => ['level', example('demo'), '--braking', '0.9', '--json'] },
  { name: 'limits', args: (to) => ['limits', example('demo'), '--svg', `${to}/limits.svg`] },
  {
    name: 'surge',
    args: (to) => ['surge', example('demo'), '--svg', `${to}/surge.svg`, '--csv', `${to}/surge.csv`],
  },
  { name: 'fit', args: (to) => ['fit', example('demo'), '--svg', `${to}/room.svg`] },
  { name: 'fit, a scan', args: () => ['fit', example('scanned-crossmember'), '--json'] },
  { name: 'dipstick', args: (to) => ['dipstick', example('demo'), '--svg', `${to}/stick.svg`] },
  { name: 'worksheet', args: (to) => ['worksheet', example('demo'), '--out', `${to}/sheet.pdf`] },
  { name: 'report', args: (to) => ['report', example('two-wings'), '--out', `${to}/page.html`] },
  { name: 'cut', args: (to) => ['cut', example('two-wings'), '--out', `${to}/set`] },
  {
    name: 'cut, a drawn rail',
    args: (to) => ['cut', example('drawn-rail'), '--out', `${to}/set`, '--despite-fails'],
  },
  { name: 'new', args: (to) => ['new', `${to}/pan.yaml`, '--from', 'inches'] },
  {
    name: 'size',
    args: (to) => [
      'size',
      example('two-wings'),
      '--free',
      'fill',
      '--for',
      'most oil',
      '--out',
      `${to}/sized.yaml`,
    ],
  },
];

const nodes = [process.execPath, ...(process.env.NODES ?? '').split(':').filter((path) => path !== '')];
const version = (node: string): string => spawnSync(node, ['--version'], { encoding: 'utf8' }).stdout.trim();
const places: readonly Place[] = nodes.flatMap((node, i) =>
  (i === 0 ? [HABITS[0], ...HABITS] : HABITS.slice(0, 2)).map((habit) => {
    if (habit === undefined) throw new Error('no habit');
    return { name: `${version(node)}, ${habit.name}`, node, env: habit.env };
  }),
);

let differing = 0;
for (const command of commands) {
  const found = places.map((place) => digestOf(pan, command, place));
  const off = places.filter((_, i) => found[i] !== found[0]);
  if (off.length > 0) differing++;
  console.log(
    `${command.name}: ${found[0]?.split(' ').slice(0, 2).join(' ')}, ${off.length === 0 ? 'the same everywhere' : `DIFFERS in ${off.map(({ name }) => name).join('; ')}`}`,
  );
}
const versions = nodes.map(version).join(', ');
console.log(`${commands.length} commands in ${places.length} places (${versions}): ${differing} differ`);
keepRecord('same-bytes', {
  what: 'Commands whose bytes were compared over runs, time zones, languages and versions of node',
  count: commands.length,
  seed: 0,
  found: `${places.length} places with ${versions}: ${differing} differ`,
});
if (differing > 0) process.exitCode = 1;
