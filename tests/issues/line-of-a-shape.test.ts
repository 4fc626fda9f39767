import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, it } from 'vitest';
import { changed, exampleText } from '../design-text.js';
import { buildPan, folderFor, runPan } from '../hostile/pan-command.js';

beforeAll(buildPan);

// What is found only when the pan is built named its key and no line: 40 lines up or down in the file.
it.each([
  ['check', 'lid_down: 82', 'lid_down: 820', 'baffles[0]'],
  ['cut', 'joints: {}', 'joints: {split: [{part: bely, across_at: 400}]}', 'pan.joints.split'],
])('%s says the line of a shape that cannot be', (command, old, wrong, key) =>
  folderFor((folder) => {
    const text = changed(exampleText('demo'), old, wrong);
    writeFileSync(join(folder, 'pan.yaml'), text);
    const { code, err } = runPan(
      [command, 'pan.yaml', ...(command === 'cut' ? ['--out', 'set'] : [])],
      folder,
    );
    const line = text.split('\n').findIndex((one) => one.includes(wrong)) + 1;
    expect(code).toBe(2);
    expect(err).toMatch(new RegExp(`^pan\\.yaml:${line}:\\d+: `));
    expect(err).toContain(key);
  }),
);
