// Loaded before a program (node --import): ends it with SIGKILL at its PAN_STOP_AT-th change to the disk, before it,
// halfway through it where it writes, or after it, as PAN_STOP_HOW says. With PAN_COUNT_TO it only counts them.
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const stopAt = Number(process.env.PAN_STOP_AT ?? 0);
const how = process.env.PAN_STOP_HOW ?? 'before';
const countTo = process.env.PAN_COUNT_TO;
const plain = { ...fs };
const changes = [
  'mkdirSync',
  'openSync',
  'writeFileSync',
  'fsyncSync',
  'renameSync',
  'unlinkSync',
  'rmdirSync',
];
let seen = 0;

const die = () => process.kill(process.pid, 'SIGKILL');
const isChange = (name, args) => name !== 'openSync' || args[1] === 'wx';

for (const name of changes) {
  fs[name] = (...args) => {
    if (!isChange(name, args) || ++seen !== stopAt) return plain[name](...args);
    if (how === 'halfway' && name === 'writeFileSync') {
      const whole = Buffer.from(args[1]);
      plain.writeFileSync(args[0], whole.subarray(0, Math.floor(whole.length / 2)));
    }
    if (how === 'after') plain[name](...args);
    return die();
  };
}
syncBuiltinESMExports();
if (countTo !== undefined) process.on('exit', () => plain.writeFileSync(countTo, String(seen)));
