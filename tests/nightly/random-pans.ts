// Puts random pans by the hundred thousand under every law. COUNT and PAN_SEED say how many and from which seed on; a
// pan that breaks one is printed with the plainest design that still does. RECORD=1 keeps the tally in reference/runs.
// Exits 1 when a law is broken.
import { LAWS } from '../pan-law.js';
import { tryPans } from '../pan-trial.js';
import { keepRecord } from '../run-record.js';

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
keepRecord('random-pans', {
  what: `Random pans under ${LAWS.length} laws each`,
  count,
  seed,
  found: `${refused} rightly refused, ${failures.length} broke a law`,
});
if (failures.length > 0) process.exitCode = 1;
