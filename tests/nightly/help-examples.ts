// Types every example of the help into a shell as it stands. RECORD=1 keeps the tally; exits 1 when one does not run.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { commands } from 'pan-cli/commands/list.js';
import { furnish, typed } from '../hostile/help-example.js';
import { STACK } from '../hostile/pan-command.js';
import { keepRecord } from '../run-record.js';

let [count, wrong] = [0, 0];
for (const { name, examples } of commands) {
  for (const [line] of examples) {
    const folder = mkdtempSync(join(tmpdir(), 'pan-help-'));
    try {
      furnish(folder, 'packages/pan-cli');
      if (name === 'new') rmSync(join(folder, 'my-pan.yaml'));
      if (line.endsWith('--replace')) typed(line.replace(' --replace', ''), folder);
      const { code, out, err } = typed(line, folder);
      // Questions need somebody to answer them, a drawing that says no unit is not fit to cut, a page is served on.
      const ends: readonly (number | null)[] =
        line === 'pan new my-pan.yaml'
          ? [2, 3]
          : name === 'inspect'
            ? [0, 1]
            : name === 'view'
              ? [null, 130, 0]
              : [0];
      const good =
        ends.includes(code) && !STACK.test(err) && (name !== 'view' || out.includes('http://127.0.0.1:'));
      console.log(`${good ? 'runs' : 'WRONG'}  exit ${code}  ${line}`);
      if (!good) console.log(`${out.slice(-300)}\n${err.slice(0, 600)}`);
      count++;
      if (!good) wrong++;
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  }
}
const found = `${count - wrong} run as they stand, ${wrong} wrong`;
console.log(`${count} examples of the help: ${found}`);
keepRecord('help-examples', { what: 'Examples of the help, each typed into a shell', count, seed: 0, found });
if (wrong > 0) process.exitCode = 1;
