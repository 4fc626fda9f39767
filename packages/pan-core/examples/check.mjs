// Asks every question of a design and prints what binds first, with what to change.
import { checkDesign, PanError, readDesign } from 'pan-core';
import { design } from './design.mjs';

const report = checkDesign(readDesign(design));
const open = report.checks.filter(({ status }) => status === 'fail' || status === 'unknown');
console.log(`${report.title}: ${open.length} of ${report.checks.length} checks are not passed`);
console.log(`holds ${report.capacity.to_rail_L.toFixed(2)} L to the rail`);
for (const { id, status, because } of open.slice(0, 3)) console.log(`${status} ${id}: ${because}`);

// What is wrong with a design comes all at once, each with its place.
try {
  readDesign({ ...design, oil: { fill: '5.5 qt', colour: 'red' } });
} catch (error) {
  if (!(error instanceof PanError)) throw error;
  for (const { code, path, message } of error.problems)
    console.log(`${code} at ${path.join('.')}: ${message}`);
}
