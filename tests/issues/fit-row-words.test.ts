import { fitChecks } from 'pan-core/check/fit-checks.js';
import { clearances } from 'pan-core/clearance/index.js';
import { buildPan, outerSolids } from 'pan-core/pan/index.js';
import { expect, test } from 'vitest';
import { sampleDesign } from '../sample-design.js';

// The remedy named the two features nearest at rest, while the row is judged at its worst, where others bind.
test('what to move is what binds at the worst', () => {
  const design = sampleDesign((d) => {
    d.chassis.ground = null;
    d.chassis.moves = { rock: 0, up: 0, down: 40, foreAft: 0 };
    // Level with the foot of the step at rest, under the shallow floor once the engine is down.
    d.engine.tilt = { noseUp: 0, leanLeft: 0 };
    d.chassis.obstacles = [
      {
        name: 'bar',
        shape: { kind: 'box', min: [341, -60, -140], max: [420, 60, -90] },
        clear: 40,
        plusMinus: 0,
      },
    ];
  });
  const model = buildPan(design);
  const row = clearances(design, outerSolids(design, model.profile), []).find((c) => c.name === 'bar');
  expect(row?.worstBetween).not.toEqual(row?.between);
  const check = fitChecks(design, model).find((c) => c.id === 'clear_bar');
  expect(check?.try).toContain(`between ${row?.worstBetween[0]} and bar`);
});
