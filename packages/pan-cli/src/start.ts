import { type Program, storedProgram } from './stored-program.js';

/** Commands that load most of the calculator and are over soon, for which the stored program is worth its reading. */
const QUICK = ['check'];

const asked = process.argv.slice(2);
const stored =
  QUICK.includes(asked[0] ?? '') && !asked.includes('--help') ? storedProgram(import.meta.url) : null;
const { main }: Program = stored ?? (await import('./main.js'));
await main(asked);
