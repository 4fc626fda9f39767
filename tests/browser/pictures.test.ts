import { execFileSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import { buildPan } from '../hostile/pan-command.js';
import { hasBrowser, MISSING_BROWSER, openBrowser, PIXELS } from './chromium.js';

const here = (path: string): string => fileURLToPath(new URL(path, import.meta.url));
const docs = here('../../packages/pan-cli/docs/');

/** Share of pixels of two pictures that differ by more than a shade; 1 where their sizes differ. */
const COMPARE = `async ([a, b]) => {
  const pixels = ${PIXELS};
  const [one, other] = [await pixels(a), await pixels(b)];
  if (one.width !== other.width || one.height !== other.height) return 1;
  let apart = 0;
  for (let i = 0; i < one.data.length; i += 4)
    if (Math.abs(one.data[i] - other.data[i]) > 64) apart++;
  return apart / (one.data.length / 4);
}`;
/** Printed pages carry their letters with them, so that a line that moved or a table that changed shows. */
const MOST_APART = 0.002;
/** A browser takes the letters of the machine it is on: of its pictures only the size is held. */
const BROWSERS = ['page.png', 'page-solid.png'];

it('the pictures in docs are what the tool draws today', async (ctx) => {
  if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
  buildPan();
  const folder = mkdtempSync(join(tmpdir(), 'pan-pictures-test-'));
  const browser = await openBrowser({ solids: true });
  try {
    execFileSync(process.execPath, [here('../../packages/pan-cli/write-pictures.mjs'), folder], {
      stdio: 'pipe',
    });
    const page = await browser.newPage();
    const names = readdirSync(folder);
    expect(names.length).toBeGreaterThan(5);
    for (const name of names) {
      const pair = [join(docs, name), join(folder, name)].map((path) =>
        readFileSync(path).toString('base64'),
      );
      const most = BROWSERS.includes(name) ? 1 : MOST_APART;
      expect(await page.evaluate(`(${COMPARE})(${JSON.stringify(pair)})`), name).toBeLessThan(most);
    }
    const readme = readFileSync(here('../../README.md'), 'utf8');
    const shown = [...readme.matchAll(/packages\/pan-cli\/docs\/([\w-]+\.png)/g)].map(
      (match) => match[1] ?? '',
    );
    expect(shown.length).toBeGreaterThan(5);
    for (const name of shown) expect(existsSync(join(docs, name)), name).toBe(true);
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true });
  }
});
