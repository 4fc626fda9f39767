// Runs `pan check` on the demo as the stored program and keeps what the engine compiled on the way:
// node store-program.mjs PROGRAM RESULT. In a process of its own, as a user's run is.
import { readFileSync, renameSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { Script } from 'node:vm';

const [program, result] = process.argv.slice(2);
const url = pathToFileURL(program).href;
const script = new Script(readFileSync(program, 'latin1'), { filename: url });
const exports = {};
script.runInThisContext()(exports, createRequire(url), url);
await exports.main(['check', fileURLToPath(new URL('examples/demo.yaml', import.meta.url))]);
process.exitCode = 0;
writeFileSync(`${result}.draft`, script.createCachedData());
renameSync(`${result}.draft`, result);
