// Puts random pans by the hundred thousand under every law. COUNT and PAN_SEED say how many and from which seed on,
// MINUTES how long at most; a pan that breaks one is printed with the plainest design that still does. RECORD=1 keeps
// the tally in reference/runs, as far as it has come, so that a run which is stopped counts too. Exits 1 when a law is
// broken.
import { LAWS } from '../pan-law.js';
import { tryPans } from '../pan-trial.js';
import { keepRecord } from '../run-record.js';

const most = Number(process.env.COUNT ?? 100_000);
const seed = Number(process.env.PAN_SEED ?? 1);
const until = performance.now() + 60_000 * Number(process.env.MINUTES ?? Number.POSITIVE_INFINITY);
const AT_ONCE = 100;

const worst = new Map<string, number>();
let [count, refused, broken] = [0, 0, 0];
while (count < most && performance.now() < until) {
  const found = tryPans(seed + count, Math.min(AT_ONCE, most - count), () => LAWS);
  count += found.pans;
  refused += found.refused;
  for (const [name, off] of found.worst) worst.set(name, Math.max(worst.get(name) ?? 0, off));
  for (const failure of found.failures) if (broken++ < 20) console.log(failure);
  if (process.stderr.isTTY) process.stderr.write(`\r${count} of ${most}`);
  keepRecord('random-pans', {
    what: `Random pans under ${LAWS.length} laws each`,
    count,
    seed,
    found: `${refused} rightly refused, ${broken} broke a law`,
  });
}
for (const law of LAWS)
  console.log(`${law.name}: worst ${worst.get(law.name) ?? 0} ${law.unit} of ${law.allowed}`);
console.log(`${count} random pans from seed ${seed}: ${refused} rightly refused, ${broken} break a law`);
if (broken > 0) process.exitCode = 1;
