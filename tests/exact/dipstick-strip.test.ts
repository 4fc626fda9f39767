import { stripSvg } from 'pan-cli/report/strip-svg.js';
import { dipstickScreen } from 'pan-cli/terminal/dipstick-screen.js';
import { buildPan, createOilSystem, dipstickReport } from 'pan-core';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';
import { plainScreen } from '../plain-screen.js';
import { stepDesign } from '../sample-design.js';

const report = (title: string, depth = 180) => {
  const design = stepDesign((d) => {
    d.title = title;
    d.oil = { ...d.oil, fill: 7e6, filter: 0.5e6, galleries: 0.5e6 };
    d.pan.floor = d.pan.floor.map(([x, down]) => [x, down === 200 ? depth : down]);
    d.dipstick = { enters: [50, 0, 20], toward: [50, 0, -100] };
  });
  const read = { design, assumed: [], unknown: [] };
  return dipstickReport(read, createOilSystem(buildPan(design)));
};

const CONFIRM = 'Confirm: pour a measured quantity, wait 15 minutes, mark';

const numberIn = (text: string, pattern: RegExp): number => Number(pattern.exec(text)?.[1]);

describe('the strip', () => {
  const svg = stripSvg(report('Plain box'));

  test('is drawn at full size: a millimetre of paper is a unit of the drawing', () => {
    const size = /<svg [^>]*width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg);
    expect(size?.[1]).toBe(size?.[3]);
    expect(size?.[2]).toBe(size?.[4]);
  });

  test('has a check line of exactly 100 mm', () => {
    const lines = [...svg.matchAll(/<line x1="([\d.]+)" y1="([\d.]+)" x2="([\d.]+)" y2="([\d.]+)"/g)].map(
      (m) => m.slice(1).map(Number),
    );
    const upright = lines.filter(([x1, y1, x2, y2]) => x1 === x2 && Math.abs((y2 ?? 0) - (y1 ?? 0)) > 50);
    expect(upright.length).toBe(1);
    expectWithin(Math.abs((upright[0]?.[3] ?? 0) - (upright[0]?.[1] ?? 0)), 100, 1e-9, 'check line');
    expect(svg).toContain('check: exactly 100 mm');
  });

  test('marks full 100 mm and add 116.667 mm below the tube’s entry', () => {
    const top = numberIn(svg, /<rect x="[\d.]+" y="([\d.]+)" width="[\d.]+" height="192"/);
    // The check line’s own ends are bold too, at the far right.
    const bold = [...svg.matchAll(/x1="16" y1="([\d.]+)" x2="[\d.]+" y2="\1"[^>]*stroke-width="0.5"/g)].map(
      (m) => Number(m[1]) - top,
    );
    expectWithin(bold[0], 100, 1e-3, 'full');
    expectWithin(bold[1], 116.667, 1e-3, 'add');
  });

  test('carries the sentence word for word, as do screen and data', () => {
    expect(svg).toContain(CONFIRM);
    expect(report('Plain box').confirm).toBe(CONFIRM);
    const text = dipstickScreen(report('Plain box'), { rests_on: {}, assumed: [] }, plainScreen(80));
    expect(text.replace(/\s+/g, ' ')).toContain(CONFIRM);
    expect(text.startsWith('FULL 100.0 mm, ADD 116.7 mm down the stick\n')).toBe(true);
    expect(Math.max(...text.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test('a title cannot break out of the drawing', () => {
    const bad = stripSvg(report('</text><script>&"\u001b[31m'));
    expect(bad).not.toContain('<script');
    expect(bad).not.toContain('\u001b');
    expect(bad).toContain('&lt;script&gt;&amp;&quot;');
  });

  test('a long stick shows its lower end and says from where', () => {
    const long = stripSvg(report('Deep', 300));
    expect(long).toContain('The top edge is 120 mm down the stick.');
    expect(numberIn(long, /<svg [^>]*height="([\d.]+)mm"/)).toBeLessThan(279.4);
  });
});

test('a quart on the strip is 57.75 cubic inches', () => {
  expectWithin(report('Plain box').full.in_pan_US_qt, 6 / 0.946352946, 1e-9, 'US qt');
});
