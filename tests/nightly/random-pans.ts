// Puts random pans by the hundred thousand under every law. COUNT and PAN_SEED say how many and from which seed on; a
// pan that breaks one is printed with the plainest design that still does. RECORD=1 keeps the tally in reference/runs.
// Exits 1 when a law is broken.
import { mkdirSync, writeFileSync } from 'node:fs';
import { LAWS } from '../pan-law.js';
import { tryPans } from '../pan-trial.js';

const count = Number(process.env.COUNT ?? 100_000);
const seed = Number(process.env.PAN_SEED ?? 1);

const { refused, worst, failures } = tryPans(
  seed,
  count,
  () => LAWS,
  (done) => {
    if (process.stderr.isTTY && done % 50 === 0) process.stderr.write(`\r${done} of ${count}`);
  },
);
for (const failure of failures.slice(0, 20)) console.log(failure);
for (const law of LAWS)
  console.log(`${law.name}: worst ${worst.get(law.name) ?? 0} ${law.unit} of ${law.allowed}`);
console.log(
  `${count} random pans from seed ${seed}: ${refused} rightly refused, ${failures.length} break a law`,
);
if (process.env.RECORD === '1') {
  mkdirSync('reference/runs', { recursive: true });
  const record = {
    what: `Random pans under ${LAWS.length} laws each`,
    count,
    seed,
    found: `${refused} refused, ${failures.length} broke a law`,
    node: process.version,
  };
  writeFileSync('reference/runs/random-pans.json', `${JSON.stringify(record, null, 2)}\n`);
}
if (failures.length > 0) process.exitCode = 1;
