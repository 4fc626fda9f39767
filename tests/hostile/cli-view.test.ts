import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync, writeFileSync } from 'node:fs';
import { get, type IncomingMessage, request } from 'node:http';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { changed, SMALLEST } from '../design-text.js';
import { buildPan, folderFor, names, pan, runPan } from './pan-command.js';

beforeAll(buildPan);

interface Asked {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
}

const ask = (url: string, { method = 'GET', headers = {} }: Asked = {}): Promise<IncomingMessage> =>
  new Promise((answered, failed) => {
    request(url, { method, headers }, (response) => {
      response.resume();
      answered(response);
    })
      .on('error', failed)
      .end();
  });

/** Reads the stream of changes until a word of that kind comes. */
const heard = (url: string, kind: string): Promise<string> =>
  new Promise((found, failed) => {
    get(`${url}changes`, (response) => {
      let text = '';
      response.setEncoding('utf8').on('data', (piece: string) => {
        text += piece;
        const line = text.split('\n').find((one) => one.includes(`"kind":"${kind}"`));
        if (line !== undefined) {
          response.destroy();
          found(line.replace(/^data: /, ''));
        }
      });
    }).on('error', failed);
  });

const whole = async (url: string): Promise<string> => {
  const response: IncomingMessage = await new Promise((answered) => get(url, answered));
  let text = '';
  for await (const piece of response.setEncoding('utf8')) text += piece;
  return text;
};

const served = async (
  use: (url: string, file: string, running: ChildProcess) => Promise<void>,
): Promise<void> =>
  folderFor(async (folder) => {
    const file = join(folder, 'mine.yaml');
    writeFileSync(file, SMALLEST);
    const running = spawn(process.execPath, [pan, 'view', file, '--json'], { cwd: folder });
    try {
      let text = '';
      for await (const piece of running.stdout.setEncoding('utf8')) {
        text += piece;
        if (text.trimEnd().endsWith('}')) break;
      }
      await use(JSON.parse(text).url, file, running);
      expect(names(folder)).toEqual(['mine.yaml']);
    } finally {
      running.kill('SIGKILL');
    }
  });

describe('pan view', () => {
  it('answers only who names this machine and knows the path, and only to read', async () => {
    await served(async (url) => {
      const { port, pathname } = new URL(url);
      expect(pathname.length).toBeGreaterThan(20);
      const good = await ask(url);
      expect(good.statusCode).toBe(200);
      expect(good.headers['content-security-policy']).toMatch(/^default-src 'none'; script-src 'sha256-/);
      expect(good.headers['content-security-policy']).toMatch(/connect-src 'self'/);
      expect(good.headers['cache-control']).toBe('no-store');
      const status = async (to: string, asked: Asked = {}): Promise<number | undefined> =>
        (await ask(to, asked)).statusCode;
      // A page elsewhere that points its own name at this machine still names itself.
      expect(await status(url, { headers: { Host: `elsewhere.example:${port}` } })).toBe(403);
      expect(await status(url, { headers: { 'Sec-Fetch-Site': 'cross-site' } })).toBe(403);
      expect(await status(url, { method: 'POST' })).toBe(405);
      expect(await status(`http://127.0.0.1:${port}/`)).toBe(404);
      expect(await status(`http://127.0.0.1:${port}/${'a'.repeat(24)}/`)).toBe(404);
      expect(await status(`${url}../../etc/passwd`)).toBe(404);
    });
  });

  it('comes again when the file is saved, tells a fault with its line over the last good page, and stops on Ctrl-C', async () => {
    await served(async (url, file, running) => {
      await heard(url, 'again');
      expect(await whole(url)).toContain('<h1>Smallest</h1>');
      const fault = heard(url, 'fault');
      writeFileSync(file, changed(readFileSync(file, 'utf8'), 'fill: 7.2 L', 'fill: lots'));
      expect(JSON.parse(await fault).sentences.join('\n')).toMatch(/mine\.yaml:7:\d+: oil\.fill/);
      expect(await whole(url)).toContain('<h1>Smallest</h1>');
      const again = heard(url, 'again');
      writeFileSync(file, changed(SMALLEST, 'title: Smallest', 'title: Mended'));
      await again;
      expect(await whole(url)).toContain('<h1>Mended</h1>');
      const ended = once(running, 'exit');
      running.kill('SIGINT');
      expect((await ended)[0]).toBe(0);
    });
  });

  it.each(['80', '99999', '8080x', '-1'])('refuses port %s', (port) => {
    const ran = runPan(['view', 'mine.yaml', `--port=${port}`]);
    expect(ran.code).toBe(2);
    expect(ran.err).toMatch(/1024 to 65535/);
  });
});
