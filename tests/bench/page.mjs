// From a moved slider to redrawn pools, measured inside the page in Debian's Chromium: from the input event to the
// first frame after the new oil stands in the document. Prints the median for each example; exits 1 over the bound.
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { chromium } from 'playwright-core';

const MOST_MS = 16;
const MOVES = 60;
const PROGRAM = '/usr/bin/chromium';
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const pan = here('../../packages/pan-cli/dist/pan.js');
const EXAMPLES = ['demo', 'two-wings', 'inches'];

const median = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];

const measure = async (moves) => {
  const slider = document.querySelector('#forward');
  const set = Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value').set;
  const words = document.querySelector('#pools');
  const [drawn, framed] = [[], []];
  for (let i = 0; i < moves; i++) {
    await new Promise((next) => requestAnimationFrame(() => setTimeout(next)));
    const changed = new Promise((seen) => {
      const watch = new MutationObserver(() => {
        watch.disconnect();
        seen();
      });
      watch.observe(words, { subtree: true, childList: true, attributes: true, characterData: true });
    });
    set.call(slider, String((-0.02 * (i + 1)).toFixed(2)));
    const start = performance.now();
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    await changed;
    // Laying out is part of drawing: asking for a size makes it happen now.
    words.getBoundingClientRect();
    drawn.push(performance.now() - start);
    await new Promise((frame) => requestAnimationFrame(frame));
    framed.push(performance.now() - start);
  }
  return { drawn, framed };
};

if (!existsSync(PROGRAM)) console.log('skipped: chromium missing');
else {
  const folder = mkdtempSync(join(tmpdir(), 'pan-page-bench-'));
  const browser = await chromium.launch({
    executablePath: PROGRAM,
    args: [
      '--no-sandbox',
      '--disable-background-networking',
      '--use-angle=swiftshader',
      '--enable-unsafe-swiftshader',
    ],
  });
  try {
    for (const name of EXAMPLES) {
      const file = join(folder, `${name}.html`);
      spawnSync(process.execPath, [
        pan,
        'report',
        here(`../../packages/pan-cli/examples/${name}.yaml`),
        '--out',
        file,
      ]);
      const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
      await page.goto(pathToFileURL(file).href);
      await page.waitForSelector('html[data-live="yes"]');
      const { drawn, framed } = await page.evaluate(measure, MOVES);
      const ms = median(drawn);
      console.log(
        `${name.padEnd(10)} slider to redrawn pools ${ms.toFixed(1)} ms (next frame ${median(framed).toFixed(1)} ms)  ${ms < MOST_MS ? '' : 'NOT '}under ${MOST_MS} ms`,
      );
      if (ms >= MOST_MS) process.exitCode = 1;
      await page.close();
    }
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}
