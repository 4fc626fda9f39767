import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { changed, SMALLEST } from '../design-text.js';
import { buildPan, example, inFile, inFolder, names, runPan } from './pan-command.js';

interface PageRead {
  readonly tags: Readonly<Record<string, number>>;
  readonly handlers: readonly string[];
  readonly fetched: readonly string[];
  readonly heading: string;
  readonly title: string;
  readonly policy: string;
}

const reader = fileURLToPath(new URL('html-tags.py', import.meta.url));

/** The page as the HTML reader of Python's library sees it. */
const readPage = (file: string): PageRead =>
  JSON.parse(execFileSync('/usr/bin/python3', [reader, file], { encoding: 'utf8' }));

const hash = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** What stands between two marks, each of them once in the page. */
const between = (page: string, from: string, to: string): string => {
  const start = page.lastIndexOf(from) + from.length;
  return page.slice(start, page.indexOf(to, start));
};

beforeAll(buildPan);

describe('pan report', () => {
  it('writes one small page that may fetch nothing, the same bytes each time, and ends as pan check does', () => {
    inFolder((folder) => {
      const [a, b] = ['a.html', 'b.html'].map((name) => join(folder, name)) as [string, string];
      const ran = runPan(['report', example('demo'), '--out', a, '--json']);
      expect(ran.code).toBe(1);
      expect(JSON.parse(ran.out).verdict).toBe('fail');
      runPan(['report', example('demo'), '--out', b]);
      const page = readFileSync(a, 'utf8');
      expect(readFileSync(b, 'utf8') === page).toBe(true);
      expect(JSON.parse(ran.out).bytes).toBe(Buffer.byteLength(page));
      // What a phone on a slow line and a full stick still take: the brief of the page.
      expect(Buffer.byteLength(page)).toBeLessThan(1.5e6);
      const { fetched, tags, policy } = readPage(a);
      expect(fetched.filter((to) => !to.startsWith('#') && to !== 'data:,')).toEqual([]);
      expect(tags.script).toBe(2);
      expect(tags.h1).toBe(1);
      const rules = new Map(policy.split('; ').map((rule) => rule.split(/ (.*)/) as [string, string]));
      expect(rules.get('default-src')).toBe("'none'");
      expect(rules.get('base-uri')).toBe("'none'");
      expect(rules.get('form-action')).toBe("'none'");
      expect(rules.get('script-src')).toBe(hash(between(page, '<script>', '</script>')));
      expect(rules.get('style-src')).toBe(hash(between(page, '<style>', '</style>')));
    });
  });

  it('shows a title that would be markup as text', () => {
    const title = `</script><img src=x onerror=alert(1)>--></title><!--<script>&lt;b&gt; "a" 'b'`;
    inFile(changed(SMALLEST, 'title: Smallest', `title: ${JSON.stringify(title)}`), (file, folder) => {
      const out = join(folder, 'page.html');
      expect(runPan(['report', file, '--out', out]).err).toBe('');
      const read = readPage(out);
      expect(read.title).toBe(title);
      expect(read.heading).toBe(title);
      expect(read.handlers).toEqual([]);
      expect(read.tags.img).toBeUndefined();
      expect(read.tags.script).toBe(2);
      const data = between(
        readFileSync(out, 'utf8'),
        '<script type="application/json" id="data">',
        '</script>',
      );
      expect(data).not.toMatch(/[<>&\u2028\u2029]/);
      expect(JSON.parse(data).title).toBe(title);
    });
  });

  it('keeps a page that stands unless told to replace it, and writes none for a faulty file', () => {
    inFile(SMALLEST, (file, folder) => {
      const out = join(folder, 'page.html');
      writeFileSync(out, 'mine');
      expect(runPan(['report', file, '--out', out]).code).toBe(3);
      expect(readFileSync(out, 'utf8')).toBe('mine');
      expect(runPan(['report', file, '--out', out, '--replace']).code).toBe(1);
      expect(readFileSync(out, 'utf8')).toMatch(/^<!doctype html>/);
    });
    inFile('format: 1\ntitle: [', (file, folder) => {
      expect(runPan(['report', file, '--out', join(folder, 'page.html')]).code).toBe(2);
      expect(runPan(['report', file]).code).toBe(2);
      expect(names(folder)).toEqual(['pan.yaml']);
    });
  });
});
