import { spawn } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseLog } from 'pan-cli/read/log-file.js';
import { surgeCsv } from 'pan-cli/report/surge-csv.js';
import { surgeSvg } from 'pan-cli/report/surge-svg.js';
import { createProgress } from 'pan-cli/terminal/progress.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildPan, example, folderFor, inFolder, pan, runPan } from './pan-command.js';
import { panHere } from './pan-here.js';

beforeAll(buildPan);

/** A log of a wavy lap: time, forward, and sideways to the right. */
const lap = (seconds: number): string =>
  [
    'Some logger, session 3',
    'Time,"Long, g",Lat right',
    's,g,g',
    ...Array.from({ length: 50 * seconds }, (_, i) =>
      [i / 50, (0.6 * Math.sin(i / 80)).toFixed(4), (0.8 * Math.sin(i / 130)).toFixed(4)].join(','),
    ),
  ].join('\n');

const COLUMNS = ['--time', 'time', '--forward', 'Long, g', '--left=-Lat right'];

describe('pan surge', () => {
  it('names the case that bares first, and tells what is not in it and what is assumed', () => {
    const { code, out, err } = runPan(['surge', example('demo')]);
    expect(code, err).toBe(0);
    expect(out).toMatch(/^trail into right bares the mouth first: after 1\.\d\d s/);
    expect(out).toContain('Slosh is not solved');
    expect(out).toContain('door leak: 0.02');
    expect(err).toBe('');
  });

  it('gives JSON whose keys end in their unit, with the whole series, and nothing else on standard output', async () => {
    const { out } = await panHere(['surge', example('two-wings'), '--case', 'firm stop', '--json']);
    const data = JSON.parse(out);
    expect(data.cases).toHaveLength(1);
    const [one] = data.cases;
    expect(one.time_to_bare_s).toBeNull();
    expect(one.least_submergence_mm).toBeGreaterThan(0);
    expect(one.resolved).toBe(true);
    expect(one.series.time_s).toHaveLength(one.series.submergence_mm.length);
    expect(Math.abs(one.oil_drift)).toBeLessThan(1e-9);
  });

  it('runs a logged lap with a preamble, units under the names, a turned sign, and writes both files whole', () =>
    inFolder((folder) => {
      writeFileSync(join(folder, 'lap.csv'), lap(12));
      const args = [
        'surge',
        example('demo'),
        '--log',
        'lap.csv',
        ...COLUMNS,
        '--svg',
        'a.svg',
        '--csv',
        'a.csv',
      ];
      const { code, out, err } = runPan(args, folder);
      expect(code, err).toBe(0);
      expect(out).toContain('lap.csv');
      const rows = readFileSync(join(folder, 'a.csv'), 'utf8').trimEnd().split('\r\n');
      expect(rows.length).toBe(12 * 50 + 1);
      expect(Number(rows[101]?.split(',')[3])).toBeCloseTo(-0.8 * Math.sin(100 / 130), 3);
      expect(readFileSync(join(folder, 'a.svg'), 'utf8')).toMatch(/<\/svg>\n$/);
      expect(runPan(args, folder).code).toBe(3);
      expect(runPan([...args, '--replace'], folder).code).toBe(0);
    }));

  it.each([
    [['--case', 'hard stpo'], /Did you mean "hard stop"/],
    [['--preset', 'autocros'], /autocross/],
    [['--preset', 'track', '--case', 'hard stop'], /each say what to drive/],
    [['--time', 'Time'], /belong to a log/],
    [['--log', 'no-such.csv'], /names of its columns/],
    [['--log', 'no-such.csv', '--time', 'a', '--forward', 'b', '--left', 'c'], /could not be read/],
    [['--oil-temp', 'hot'], /--oil-temp must be a temperature/],
    [['--oil-temp', '400'], /--oil-temp must be a temperature/],
    [['--fill', '200 L'], /--fill is 200 L/],
    [['--delay', '-1'], /--delay is -1 s/],
    [['--door-leak', '140%'], /--door-leak is 140 %/],
    [['--return', 'fron'], /Did you mean "front"/],
    [['--return', '1,2'], /where oil comes back/],
    [['--fill', '30 L'], /do not fit/],
  ])('refuses %j with 2 and says why', async (args, why) => {
    const { code, out, err } = await panHere(['surge', example('demo'), ...args]);
    expect(code).toBe(2);
    expect(err).toMatch(why);
    expect(err).not.toMatch(/^\s+at /m);
    expect(err).not.toContain('--in-pan');
    expect(out).toBe('');
  });

  it('takes where oil comes back, after how long, and what a shut door leaks', async () => {
    const hardStop = async (...args: string[]) => {
      const { out, err } = await panHere([
        'surge',
        example('demo'),
        '--case',
        'hard stop',
        '--oil-temp',
        '100',
        ...args,
        '--json',
      ]);
      expect(err).toBe('');
      const [one] = JSON.parse(out).cases;
      expect(Math.abs(one.oil_drift)).toBeLessThan(1e-9);
      return one;
    };
    // Under braking oil lies forward: what comes back ahead is not at the mouth, which sits at the rear.
    const [front, rear] = [await hardStop('--return', 'front'), await hardStop('--return', 'rear')];
    expect(rear.time_to_bare_s).toBeGreaterThan(front.time_to_bare_s);
    expect(rear.least_submergence_mm).toBeGreaterThan(front.least_submergence_mm);
    // Oil that stays in the engine longer is not in the pan.
    const [late, soon] = [await hardStop('--delay', '8 s'), await hardStop('--delay', '0.5 s')];
    expect(late.least_submergence_mm).toBeLessThan(soon.least_submergence_mm);
    const leak = async (share: string): Promise<number> =>
      (await hardStop('--door-leak', share)).passages.find((p: { kind: string }) => p.kind === 'door').back_L;
    expect(await leak('40 %')).toBeGreaterThan(await leak('0 %'));
  });

  it('takes a bung by its name as the point it stands for', () =>
    folderFor(async (folder) => {
      const text = readFileSync(example('demo'), 'utf8').replace(
        /^bungs: \[\].*$/m,
        'bungs: [{name: turbo drain, purpose: return, at: [400, 95, -30], toward: [400, 140, -30]}]',
      );
      const file = join(folder, 'a.yaml');
      writeFileSync(file, text);
      const run = async (to: string) =>
        JSON.parse(
          (await panHere(['surge', file, '--case', 'hard stop', '--return', to, '--json'])).out || 'null',
        );
      const named = await run('turbo drain');
      expect(named, 'the design with a bung').not.toBeNull();
      expect(named.cases).toEqual((await run('400,90,-30')).cases);
      expect((await panHere(['surge', file, '--return', 'turbo drian'])).err).toContain('"turbo drain"');
    }));

  it('stopped on the way, it leaves nothing behind', async () => {
    const folder = mkdtempSync(join(tmpdir(), 'pan-surge-'));
    try {
      writeFileSync(join(folder, 'lap.csv'), lap(600));
      const run = spawn(
        process.execPath,
        [pan, 'surge', example('demo'), '--log', 'lap.csv', ...COLUMNS, '--svg', 'a.svg', '--csv', 'a.csv'],
        { cwd: folder },
      );
      const ended = new Promise<NodeJS.Signals | null>((done) => {
        run.on('exit', (_, signal) => done(signal));
      });
      await new Promise((done) => setTimeout(done, 1500));
      run.kill('SIGINT');
      expect(await ended).toBe('SIGINT');
      expect(readdirSync(folder)).toEqual(['lap.csv']);
    } finally {
      rmSync(folder, { recursive: true });
    }
  });
});

describe('a log', () => {
  const names = { time: 't', forward: 'x', left: 'y', unit: 1 };
  it('is read by tabs, semicolons with decimal commas, and quotes; in m/s² it is turned into g', () => {
    expect(parseLog('t\tx\ty\n0\t1\t2\n1\t3\t4', names)).toEqual({
      time: [0, 1],
      forward: [1, 3],
      left: [2, 4],
    });
    expect(parseLog('y;t;x\r\n0,5;0;1,5\r\n1;1;2\r\n', names).forward).toEqual([1.5, 2]);
    expect(parseLog('t,"x",y\n0,1,2\n1,3,4', { ...names, unit: 0.1 }).left).toEqual([0.2, 0.4]);
  });
  it.each([
    ['t,x,y\n0,1,2\n1,oops,4', /line 3 has no number/],
    ['t,x,y\n0,1,2\n1,2,3\n1,3,4', /line 4: time 1 s does not come after 1 s/],
    ['t,x,z\n0,1,2', /there is no column y/],
    ['', /no line names the columns/],
    ['t,x,y\n0,1,2', /fewer than two samples/],
    ['t,x,y\n0,NaN,2\n1,Infinity,2\n2,1e999,1', /fewer than two|no number/],
  ])('that reads %j is refused', (text, why) => {
    expect(() => parseLog(text, names)).toThrow(why);
  });
});

describe('progress', () => {
  it('is shown to a terminal from the first second on, not more than five times a second, and cleared', () => {
    const told: string[] = [];
    let now = 0;
    const progress = createProgress(
      (text) => told.push(text),
      true,
      () => now,
    );
    for (; now < 3000; now += 10) progress.show(now / 3000);
    expect(told[0]).toMatch(/^\r3[34] % done/);
    expect(told.length).toBeLessThan(12);
    progress.clear();
    expect(told.at(-1)).toMatch(/^\r +\r$/);
  });
  it('is not shown to anything but a terminal, nor by a short run', () => {
    const told: string[] = [];
    let now = 0;
    for (const terminal of [true, false]) {
      const progress = createProgress(
        (text) => told.push(text),
        terminal,
        () => now,
      );
      const most = terminal ? 900 : 5000;
      for (const start = now; now < start + most; now += 10) progress.show(0.5);
      progress.clear();
    }
    expect(told).toEqual([]);
  });
});

describe('files', () => {
  it('hold no markup or formula that a name brought along', async () => {
    const { out } = await panHere(['surge', example('demo'), '--case', 'hard stop', '--json']);
    const data = JSON.parse(out);
    data.cases[0].name = '=SUM(A1)<script>"';
    expect(surgeSvg(data)).not.toContain('<script>');
    expect(surgeCsv(data)).not.toMatch(/(^|\n)=/);
  });
});
