// Moves random pans beside random scans by the thousand and measures every pair of triangles. COUNT and PAN_SEED say
// how many movements and from which seed on. RECORD=1 keeps the tally in reference/runs. Exits 1 when a worst is larger
// than what a place of the movement shows.
import { keepRecord } from '../run-record.js';
import { tryScans } from '../scan-trial.js';

const count = Number(process.env.COUNT ?? 1000);
const seed = Number(process.env.PAN_SEED ?? 1);

const tally = tryScans(seed, count, 150, (done) => {
  if (process.stderr.isTTY) process.stderr.write(`\r${done} of ${count}`);
});
for (const fault of tally.faults.slice(0, 20)) console.log(fault);
const mm = (value: number): string => `${value.toExponential(1)} mm`;
const found =
  `pan and scan apart in ${tally.apart}; at rest off by ${mm(tally.restOff)} at most; worst over the movement never ` +
  `larger than what one place shows (by ${mm(tally.over)} at most), and reached to within ${mm(tally.slack)} by looking ` +
  `densely, ${tally.clear} scans clear throughout; ${tally.faults.length} wrong`;
console.log(`${tally.movements} movements from seed ${seed}: ${found}`);
keepRecord('scan-movements', {
  what: 'Random engine movements beside random scans, against every pair of triangles',
  count: tally.movements,
  seed,
  found,
});
if (tally.faults.length > 0) process.exitCode = 1;
