// The whole path on two invented pans: one that is not ready to cut and says why, one that is, and its cut set.
import { spawnSync } from 'node:child_process';
import { rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const pan = join(here, '../dist/pan.js');
const out = join(tmpdir(), 'pan-demo-cut');
const show = (path) => relative(process.cwd(), path) || '.';

const say = (text) => process.stdout.write(`${text}\n`);

const run = (args, expected) => {
  say(`\n$ pan ${args.map((arg) => (arg.includes(' ') ? `"${arg}"` : arg)).join(' ')}\n`);
  const { status } = spawnSync(process.execPath, [pan, ...args], { stdio: 'inherit' });
  if (status !== expected) {
    say(
      `\nThe demo expected exit code ${expected} and got ${status}. Something is wrong with this checkout.`,
    );
    process.exit(1);
  }
};

say('1. A pan that nearly works. The first answer is what stops it, the second what would stop it next.');
run(['check', show(join(here, 'demo.yaml'))], 1);

say('\nThat pan is not ready to cut, so `pan check` ended with 1. Nothing has been written.');
say('\n2. A pan with two wings that passes.');
run(['check', show(join(here, 'two-wings.yaml'))], 0);

say('\n3. Its cut set.');
rmSync(out, { recursive: true, force: true });
run(['cut', show(join(here, 'two-wings.yaml')), '--out', out], 0);

say(`\nThe cut set is in ${out}`);
say(
  'Open 00-read-first.txt there, then 2-laser/ for the parts and 1-mock-up/ for the fit-up on block and car.',
);
say('\nYours next:  npx -y pnpm@10 -s pan new ../my-pan.yaml');
