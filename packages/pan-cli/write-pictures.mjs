// Draws the pictures of printed pages and of the page from the tool's own output into docs/, or into the folder named;
// needs Debian's poppler-utils and chromium. A test draws them again and holds them against docs/.
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const here = dirname(fileURLToPath(import.meta.url));
const folder = mkdtempSync(join(tmpdir(), 'pan-pictures-'));
const set = join(folder, 'set');
const docs = process.argv[2] ?? join(here, 'docs');
const PAGES = [
  ['template-map', '1-mock-up/templates.pdf', 1],
  ['template-page', '1-mock-up/templates.pdf', 9],
  ['shop-drawing', '3-bench/drawings/belly.pdf', 1],
  ['assembly', '4-weld/assembly.pdf', 1],
  ['sheet', '2-laser/nests/sheets.pdf', 1],
  ['flange-drawing', '3-bench/drawings/flange-rear.pdf', 1, 'two-piece'],
];
const BROWSER = [
  '--no-sandbox',
  '--disable-background-networking',
  '--use-angle=swiftshader',
  '--enable-unsafe-swiftshader',
  '--ignore-gpu-blocklist',
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
      join(docs, name),
    ]);
  const page = join(folder, 'page.html');
  spawnSync(process.execPath, [
    join(here, 'dist/pan.js'),
    'report',
    join(here, 'examples/demo.yaml'),
    '--out',
    page,
  ]);
  const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: BROWSER });
  const shown = await browser.newPage({ viewport: { width: 1160, height: 860 } });
  await shown.goto(pathToFileURL(page).href);
  await shown.waitForSelector('html[data-live=yes]');
  await shown.screenshot({ path: join(docs, 'page.png') });
  await shown.evaluate("document.getElementById('weld').querySelectorAll('button')[1].click()");
  await shown.locator('#spread').fill('0.5');
  await shown.locator('#solid .stage').screenshot({ path: join(docs, 'page-solid.png') });
  await browser.close();
} finally {
  rmSync(folder, { recursive: true });
}
