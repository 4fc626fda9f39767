// Reads mutated design files by the ten thousand. COUNT and PAN_SEED say how many and from which seed on; a seed that
// fails is printed, and PAN_SEED=that COUNT=1 does it again. Exits 1 when one is wrong.
import { readFileSync } from 'node:fs';
import { judgedDesign } from '../hostile/mutated-design.js';
import { mutatedText } from '../hostile/mutated-text.js';
import { randomFrom } from '../random.js';
import { keepRecord } from '../run-record.js';

const MOST_MS = 2000;
const MOST_MB = 512;
const count = Number(process.env.COUNT ?? 50_000);
const seed = Number(process.env.PAN_SEED ?? 1);
const checkEvery = Number(process.env.CHECK_EVERY ?? 25);
const texts = ['demo', 'two-wings', 'two-piece', 'inches'].map((name) =>
  readFileSync(`packages/pan-cli/examples/${name}.yaml`, 'utf8'),
);

const ends = new Map<string, number>();
let longest = 0;
let wrong = 0;
for (let i = 0; i < count; i++) {
  const text = mutatedText(texts[(seed + i) % texts.length] as string, randomFrom(seed + i));
  const { end, why, ms } = await judgedDesign(text, i % checkEvery === 0);
  ends.set(end, (ends.get(end) ?? 0) + 1);
  longest = Math.max(longest, ms);
  if (end === 'wrong' || ms > MOST_MS) {
    wrong++;
    if (wrong <= 20) console.log(`seed ${seed + i}: ${end}, ${ms.toFixed(0)} ms ${why.slice(0, 600)}`);
  }
  if (process.stderr.isTTY && i % 500 === 0) process.stderr.write(`\r${i} of ${count}`);
}
const megabytes = process.resourceUsage().maxRSS / 1024;
console.log(
  `${count} mutated design files from seed ${seed}: ${ends.get('read') ?? 0} read, ${ends.get('refused') ?? 0} refused ` +
    `with a place, ${wrong} wrong; longest ${longest.toFixed(0)} ms of ${MOST_MS}, at most ${megabytes.toFixed(0)} MB of ${MOST_MB}`,
);
keepRecord('mutated-designs', {
  what: `Mutated design files, one in ${checkEvery} of the readable ones checked whole`,
  count,
  seed,
  found:
    `${ends.get('read') ?? 0} read, ${ends.get('refused') ?? 0} refused with a place, ${wrong} wrong; ` +
    `longest ${longest.toFixed(0)} ms, at most ${megabytes.toFixed(0)} MB`,
});
if (wrong > 0 || megabytes > MOST_MB) process.exitCode = 1;
