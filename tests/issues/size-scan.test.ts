import { fileURLToPath } from 'node:url';
import { designParts } from 'pan-cli/read/index.js';
import { posed, requestFor, verdictAt } from 'pan-core';
import { expect, it } from 'vitest';

it('sizes against a scan that the design names, not past it', async () => {
  const file = fileURLToPath(
    new URL('../../packages/pan-cli/examples/scanned-crossmember.yaml', import.meta.url),
  );
  const { raw, beside } = await designParts(file);
  const free = { what: 'fill', from: 7e6, to: 7.1e6, step: null };
  const problem = posed(raw, beside)(requestFor('least change', [free]));
  const { rows } = verdictAt(problem, { at: [0], enough: Number.POSITIVE_INFINITY });
  const row = rows.find(({ id }) => id.includes('crossmember'));
  expect(row?.status).not.toBe('unknown');
  expect(row?.value).not.toBeNull();
});
