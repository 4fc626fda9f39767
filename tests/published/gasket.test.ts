import type { GasketKind } from 'pan-core/design/index.js';
import { gasketNeed, gasketPitch } from 'pan-core/sheet/index.js';
import { expect, test } from 'vitest';
import { expectPublished, row, rowsUnder, title } from './rows.js';

test(title('holes.gasket-pitch'), () => {
  const { bolt_mm, flange_mm, gasket_m } = row('holes.gasket-pitch').inputs as Record<string, number>;
  expectPublished('holes.gasket-pitch', gasketPitch(bolt_mm!, flange_mm!, gasket_m!));
});

test('every gasket factor and seating stress of ASME BPVC VIII-1, table 2-5.1, that a flange is asked for', () => {
  const rows = rowsUnder('holes.gasket');
  expect(rows).toHaveLength(8);
  for (const { id, inputs } of rows) {
    const { m, y } = gasketNeed((inputs as { gasket: GasketKind }).gasket);
    // 1 psi is 0.006894757 N/mm², to the seven digits that the table of gaskets carries.
    expectPublished(id, id.endsWith('.m') ? m : Number((y / 0.006894757).toFixed(9)));
  }
});
