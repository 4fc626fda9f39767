// Draws the pictures of printed pages in docs/ from the pages themselves; needs Debian's poppler-utils.
import { execFileSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pan-pictures-'));
const set = join(folder, 'set');
const PAGES = [
  ['template-map', '1-mock-up/templates.pdf', 1],
  ['template-page', '1-mock-up/templates.pdf', 9],
  ['shop-drawing', '3-bench/drawings/belly.pdf', 1],
  ['sheet', '2-laser/nests/sheets.pdf', 1],
  ['flange-drawing', '3-bench/drawings/flange-rear.pdf', 1, 'two-piece'],
];
const cut = (example) => {
  const out = join(set, example);
  execFileSync(process.execPath, [
    join(here, 'dist/pan.js'),
    'cut',
    join(here, `examples/${example}.yaml`),
    '--out',
    out,
  ]);
  return out;
};

try {
  mkdirSync(set);
  const sets = { 'two-wings': cut('two-wings'), 'two-piece': cut('two-piece') };
  for (const [name, file, page, example = 'two-wings'] of PAGES)
    execFileSync('pdftoppm', [
      '-png',
      '-r',
      '84',
      '-f',
      String(page),
      '-l',
      String(page),
      '-singlefile',
      join(sets[example], file),
      join(here, 'docs', name),
    ]);
} finally {
  rmSync(folder, { recursive: true });
}
