import { mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { writeSet } from 'pan-cli/write/index.js';
import { listText } from 'pan-cli/write/set-list.js';
import { expect, test } from 'vitest';

// Killed while the last file was written: it differs from the list, and so was taken for a person's edit.
test('a set that was killed over its last file is cleared away by the next run', () => {
  const root = mkdtempSync(join(tmpdir(), 'pan-half-'));
  try {
    const files = [{ path: 'manifest.json', content: 'the whole of it' }];
    // No process has a number this large.
    const staging = join(root, '.out.new-99999999');
    mkdirSync(staging);
    writeFileSync(join(staging, '.pan-set.json'), listText(files));
    writeFileSync(join(staging, 'manifest.json'), 'the wh');
    writeSet(join(root, 'out'), files, false);
    expect(readdirSync(root)).toEqual(['out']);
  } finally {
    rmSync(root, { recursive: true });
  }
});
