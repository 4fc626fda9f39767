// Runs every measurement in this folder, one after another; exits 1 when any passes its bound.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
const self = basename(fileURLToPath(import.meta.url));
const benches = readdirSync(here).filter((name) => name.endsWith('.mjs') && name !== self);

for (const name of benches.sort()) {
  console.log(`\n${name}`);
  const { status } = spawnSync(process.execPath, [`${here}${name}`], { stdio: 'inherit' });
  if (status !== 0) process.exitCode = 1;
}
