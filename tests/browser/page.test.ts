import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, runPan } from '../hostile/pan-command.js';

/** Debian's browser, kept from asking the network for anything of its own, with drawing of solids in software. */
const FLAGS = [
  '--no-sandbox',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];
const SOLIDS = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader', '--ignore-gpu-blocklist'];
const open = (...more: readonly string[]): Promise<Browser> =>
  chromium.launch({ executablePath: '/usr/bin/chromium', args: [...FLAGS, ...more] });

let browser: Browser;
let folder: string;
let url: string;
beforeAll(async () => {
  buildPan();
  folder = mkdtempSync(join(tmpdir(), 'pan-page-'));
  const out = join(folder, 'page.html');
  runPan(['report', example('demo'), '--out', out]);
  url = pathToFileURL(out).href;
  browser = await open(...SOLIDS);
});
afterAll(async () => {
  await browser.close();
  rmSync(folder, { recursive: true, force: true });
});

interface Heard {
  readonly page: Page;
  /** Errors of the console and of scripts, and requests for anything but the page's own file. */
  readonly wrong: string[];
}

const listened = async (options: BrowserContextOptions = {}, by = browser): Promise<Heard> => {
  const page = await (await by.newContext(options)).newPage();
  const wrong: string[] = [];
  page.on('console', (said) => {
    if (said.type() === 'error' || said.type() === 'warning') wrong.push(said.text());
  });
  page.on('pageerror', ({ message }) => wrong.push(message));
  page.on('request', (asked) => {
    if (asked.url() !== url && !asked.url().startsWith('data:')) wrong.push(asked.url());
  });
  await page.goto(url);
  await page.waitForSelector('html[data-live=yes]');
  return { page, wrong };
};

const move = async (page: Page, id: string, value: number): Promise<void> => {
  await page.locator(`#${id}`).fill(`${value}`);
};

const attitudes = [
  [0, 0],
  [-0.3, 0],
  [-0.7, 0],
  [-1.1, 0],
  [0.4, 0],
  [0, 0.6],
  [0, -0.6],
  [-0.7, -0.8],
  [-0.5, 0.5],
  [0.3, -0.9],
] as const;

const levelOf = (inPan: string, forward: number, left: number) => {
  const options = [
    ...(forward === 0 ? [] : [`--${forward < 0 ? 'braking' : 'accelerating'}`, `${Math.abs(forward)} g`]),
    ...(left === 0 ? [] : [`--${left > 0 ? 'left' : 'right'}-turn`, `${Math.abs(left)} g`]),
  ];
  return JSON.parse(runPan(['level', example('demo'), '--json', '--in-pan', inPan, ...options]).out);
};

describe('the page in a browser', () => {
  it('answers its controls as the command line does, in ten attitudes, and asks nobody', async () => {
    const { page, wrong } = await listened({ viewport: { width: 1280, height: 900 } });
    const inPan = `${await page.locator('#in-pan').inputValue()} L`;
    for (const [forward, left] of attitudes) {
      await move(page, 'forward', forward);
      await move(page, 'left', left);
      const { held } = levelOf(inPan, forward, left);
      const { submergence_mm, covered } = held.pickup;
      const said = await page.locator('#pools .mouth-words').textContent();
      // The page prints whole millimetres and hundredths of a litre.
      expect(said).toContain(covered ? 'covered by' : 'BARED by');
      expect(Number(said?.match(/(\d+) mm/)?.[1])).toBe(Math.round(Math.abs(submergence_mm)));
      const litres = await page.locator('.pool-table td:nth-child(2)').allTextContents();
      const pools: readonly { volume_L: number }[] = held.pools;
      expect(litres.map((text) => Number.parseFloat(text))).toEqual(
        pools.map(({ volume_L }) => expect.closeTo(volume_L, 2)),
      );
    }
    expect(wrong).toEqual([]);
  });

  it.each([360, 1280])('fits %d px, and an accessibility checker finds nothing', async (width) => {
    const { page } = await listened({ viewport: { width, height: 800 }, bypassCSP: true });
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBe(width);
    const checker = createRequire(import.meta.url).resolve('axe-core/axe.min.js');
    await page.evaluate(readFileSync(checker, 'utf8'));
    const found: readonly { id: string; impact: string }[] = await page.evaluate(
      'axe.run().then(({ violations }) => violations.map(({ id, impact }) => ({ id, impact })))',
    );
    expect(found).toEqual([]);
  });

  it('goes by keyboard: skip link, units, a slider, a clearance, a welding step', async () => {
    const { page, wrong } = await listened();
    await page.keyboard.press('Tab');
    expect(await page.evaluate('document.activeElement.className')).toBe('skip');
    await page.keyboard.press('Tab');
    await page.keyboard.press('ArrowRight');
    expect(await page.locator('.figures').textContent()).toContain(' in');
    await page.locator('#forward').focus();
    await page.keyboard.press('ArrowLeft');
    expect(await page.locator('#forward').inputValue()).toBe('-0.01');
    await page.getByRole('button', { name: 'crossmember', exact: true }).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('#clearances [role=status]').textContent()).toContain('crossmember');
    await page.getByRole('button', { name: 'Next step' }).focus();
    await page.keyboard.press('Enter');
    expect(await page.locator('#weld [role=status]').textContent()).toMatch(/^Step 1 of/);
    expect(wrong).toEqual([]);
  });

  it('prints, reads without scripts, and shows plain views where solids are not drawn', async () => {
    const plain = await open('--disable-gpu', '--disable-3d-apis');
    try {
      const { page, wrong } = await listened({}, plain);
      expect(await page.locator('#solid canvas').isVisible()).toBe(false);
      expect(await page.locator('#solid svg.section').count()).toBe(3);
      expect(wrong).toEqual([]);
      const pdf = await page.pdf({ format: 'A4' });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
      const still = await (await plain.newContext({ javaScriptEnabled: false })).newPage();
      await still.goto(url);
      expect(await still.locator('#verdict h2').textContent()).toBe('Not ready to cut');
      expect(await still.locator('#sheets svg').count()).toBeGreaterThan(5);
    } finally {
      await plain.close();
    }
  });
});
