import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { quantity } from 'pan-cli/terminal/quantity.js';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, runPan } from '../hostile/pan-command.js';
import { panHere } from '../hostile/pan-here.js';
import { hasBrowser, MISSING_BROWSER, openBrowser, openPage, PIXELS } from './chromium.js';

const DESK = { width: 1280, height: 900 };
const PHONE = { width: 360, height: 740 };

const folder = mkdtempSync(join(tmpdir(), 'pan-page-'));
const file = join(folder, 'demo.html');
const address = pathToFileURL(file).href;
let browser: Browser;

beforeAll(async () => {
  if (!hasBrowser()) return;
  buildPan();
  runPan(['report', example('demo'), '--out', file]);
  browser = await openBrowser({ solids: true });
}, 60_000);
afterAll(async () => {
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

/** Ten attitudes: g accelerating, g to the left, litres in the pan. */
const ATTITUDES = [
  [0, 0, 5.3],
  [-0.5, 0, 5.3],
  [-1.1, 0, 5.3],
  [0.6, 0, 5.3],
  [0, 1.2, 5.3],
  [0, -1.2, 5.3],
  [-0.7, -0.8, 5.3],
  [0.4, 0.6, 4.1],
  [-0.3, 0.9, 6.5],
  [0, 0, 3.2],
] as const;

const setNumber = async (page: Page, name: string, value: number): Promise<void> => {
  const box = page.locator('#pools').getByRole('spinbutton', { name });
  await box.fill(String(value));
  await box.blur();
};

interface Level {
  readonly pools: readonly { readonly volume_L: number; readonly surface_mm: number }[];
  readonly pickup: { readonly submergence_mm: number; readonly covered: boolean };
}

const asked = async (
  forward: number,
  left: number,
  litres: number,
): Promise<Record<'held' | 'settled', Level>> => {
  const load = [
    ...(forward === 0 ? [] : [forward > 0 ? '--accelerating' : '--braking', String(Math.abs(forward))]),
    ...(left === 0 ? [] : [left > 0 ? '--left-turn' : '--right-turn', String(Math.abs(left))]),
  ];
  const words = ['level', example('demo'), '--in-pan', `${litres} L`, ...load, '--json'];
  return JSON.parse((await panHere(words)).out);
};

/** What the page writes of a state, from the same numbers as the command line's. */
const written = ({ pools, pickup }: Level): object => ({
  mouth: `Mouth ${pickup.covered ? 'covered by' : 'BARED by'} ${quantity(Math.abs(pickup.submergence_mm), 'mm', 'mm')}`,
  pools: pools.map(({ volume_L, surface_mm }) => [
    quantity(volume_L, 'L', 'mm'),
    quantity(surface_mm, 'mm', 'mm'),
  ]),
});

const shown = async (page: Page): Promise<object> => ({
  mouth: ((await page.locator('#pools .mouth-words').textContent()) ?? '').trim(),
  pools: await page
    .locator('#pools .pool-table tbody tr')
    .evaluateAll((rows) =>
      rows.map((row) => [...row.querySelectorAll('td')].map((cell) => cell.textContent ?? '')),
    ),
});

/** Pixels of a picture in the colour of a seam. */
const BEADS = `async (text) => {
  const { data } = await (${PIXELS})(text);
  let found = 0;
  for (let i = 0; i < data.length; i += 4)
    if (Math.abs(data[i] - 0x9b) + Math.abs(data[i + 1] - 0x1c) + Math.abs(data[i + 2] - 0x1c) < 12) found++;
  return found;
}`;

describe('the page in a browser', () => {
  it('shows at ten loads and fills what `pan level` says, and asks nobody anything', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page, complaints, asked: requests } = await openPage(browser, address, DESK);
    for (const [forward, left, litres] of ATTITUDES) {
      await setNumber(page, 'Accelerating', forward);
      await setNumber(page, 'Left turn', left);
      await setNumber(page, 'Oil in the pan', litres);
      const wanted = await asked(forward, left, litres);
      for (const state of ['held', 'settled'] as const) {
        await page.locator('#pools').getByLabel(state).check();
        expect(await shown(page), `${forward} ${left} ${litres} ${state}`).toEqual(written(wanted[state]));
      }
    }
    expect(complaints).toEqual([]);
    expect(requests.filter((url) => url !== address && !url.startsWith('data:'))).toEqual([]);
    await page.close();
  });

  it('shows the verdict and the numbers of `pan check`', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page } = await openPage(browser, address, DESK);
    const check = JSON.parse((await panHere(['check', example('demo'), '--json'])).out);
    const text = await page.locator('#verdict').textContent();
    expect(text).toContain('Not ready to cut');
    expect(text).toContain(check.first.title);
    for (const key of ['poured_L', 'stopped_in_pan_L', 'running_in_pan_L'])
      expect(text).toContain(quantity(check.oil[key], 'L', 'mm'));
    await page.getByLabel('in', { exact: true }).check();
    expect(await page.locator('#verdict').textContent()).toContain(
      quantity(check.capacity.to_rail_L, 'L', 'in'),
    );
    await page.close();
  });

  it('draws the seams of a welding step on the solid, and none of a step that lays none', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page } = await openPage(browser, address, DESK);
    const step = page.locator('#weld [role=status]');
    const drawnAt = async (title: string): Promise<number> => {
      const steps = await page.locator('#weld li h3').allTextContents();
      while ((await step.textContent()) !== `Step ${steps.indexOf(title) + 1} of ${steps.length}`)
        await page.getByRole('button', { name: 'Next step' }).click();
      const shot = await page.locator('#solid .stage').screenshot();
      return page.evaluate(`(${BEADS})('${shot.toString('base64')}')`);
    };
    expect(await drawnAt('Clean and fit up')).toBe(0);
    // 1.9 m of seams, half of them seen, at about a pixel a millimetre and three pixels wide.
    expect(await drawnAt('Shell, outside')).toBeGreaterThan(1000);
    expect(await drawnAt('Bolted baffles')).toBe(0);
    await page.close();
  });

  it('works from the keyboard alone', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page } = await openPage(browser, address, DESK);
    const focused = (): Promise<string> =>
      page.evaluate(() => document.activeElement?.id || (document.activeElement?.textContent ?? ''));
    await page.keyboard.press('Tab');
    expect(await focused()).toContain('verdict');
    let steps = 0;
    while ((await focused()) !== 'forward' && steps++ < 200) await page.keyboard.press('Tab');
    expect(await focused()).toBe('forward');
    const before = await page.locator('#pools .mouth-words').textContent();
    for (let i = 0; i < 40; i++) await page.keyboard.press('ArrowLeft');
    expect(Number(await page.locator('#forward').inputValue())).toBeCloseTo(-0.4, 9);
    expect(await page.locator('#pools .mouth-words').textContent()).not.toBe(before);
    const clearance = page.locator('#clearances button').first();
    await clearance.focus();
    await page.keyboard.press('Enter');
    expect(await clearance.getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'Next step' }).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('#weld [role=status]').textContent()).toMatch(/^Step 1 of/);
    await page.close();
  });

  it.for([
    ['a phone', PHONE],
    ['a desk', DESK],
  ] as const)('is no wider than %s', async ([, size], ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page, complaints } = await openPage(browser, address, size);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(size.width);
    expect(complaints).toEqual([]);
    await page.close();
  });

  it('shuts no reader out: nothing serious found by an accessibility checker', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page } = await openPage(browser, address, DESK);
    await page.evaluate(readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8'));
    const found = await page.evaluate(
      "axe.run(document, {resultTypes: ['violations']}).then((r) => r.violations.map((v) => [v.impact, v.id, v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160))]))",
    );
    const serious = (found as [string, string, string[]][]).filter(([impact]) =>
      ['serious', 'critical'].includes(impact),
    );
    expect(serious).toEqual([]);
    await page.close();
  });

  it('prints: every page of the PDF has words on it', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const { page } = await openPage(browser, address, DESK);
    const pdf = join(folder, 'page.pdf');
    await page.pdf({ path: pdf, format: 'A4' });
    const pages = execFileSync('pdftotext', [pdf, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
    expect(pages.length).toBeGreaterThan(3);
    for (const text of pages) expect(text.trim().length).toBeGreaterThan(20);
    expect(pages[0]).toContain('Not ready to cut');
    await page.close();
  });

  it('without WebGL it falls back to plain views and complains of nothing', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const plain = await openBrowser({ solids: false });
    try {
      const { page, complaints } = await openPage(plain, address, DESK);
      expect(await page.locator('#solid svg').first().isVisible()).toBe(true);
      expect(await page.locator('#solid canvas').isVisible()).toBe(false);
      expect(complaints).toEqual([]);
    } finally {
      await plain.close();
    }
  });

  it('reads without scripts', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const context = await browser.newContext({ javaScriptEnabled: false });
    const page = await context.newPage();
    await page.goto(address);
    expect(await page.locator('#verdict h2').textContent()).toBe('Not ready to cut');
    expect(await page.locator('#sheets svg').count()).toBeGreaterThan(5);
    await context.close();
  });

  it('shows a title of markup as text', async (ctx) => {
    if (!hasBrowser()) return ctx.skip(MISSING_BROWSER);
    const title = '</script><img src=x onerror=document.title="run">';
    const design = join(folder, 'hostile.yaml');
    writeFileSync(
      design,
      readFileSync(example('two-wings'), 'utf8').replace(/^title:.*$/m, `title: '${title}'`),
    );
    const hostile = join(folder, 'hostile.html');
    runPan(['report', design, '--out', hostile]);
    const { page, complaints, asked: requests } = await openPage(browser, pathToFileURL(hostile).href, DESK);
    expect(await page.locator('h1').textContent()).toBe(title);
    expect(await page.locator('img').count()).toBe(0);
    expect(await page.title()).toBe(title);
    expect(requests.filter((url) => url.includes('/x'))).toEqual([]);
    expect(complaints).toEqual([]);
    await page.close();
  });
});
