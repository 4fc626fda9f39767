import { createOilSystem, rampAnswer, restAnswer } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { expectWithin } from '../numbers.js';
import { stepDesign } from '../sample-design.js';

const load = (forward: number, left = 0) => ({ forward, left, grade: 0 });
const mouthPool = (a: ReturnType<typeof rampAnswer>) => a.pools.find((p) => p.hasPickup);

describe('L-shaped sump, sharp lip', () => {
  const system = createOilSystem(buildPan(stepDesign()));

  it('keeps the triangle under the 45° plane through the lip at 1 g braking: 150 × 150 / 2 × 200', () => {
    for (const gating of ['held', 'settled'] as const) {
      const a = rampAnswer(system, 6e6, load(-1), gating);
      expectWithin(mouthPool(a)?.volume, 2.25e6, 2.25e6 * 1e-12);
    }
  });

  it('rests in one pool 100 mm deep: 6e6 / (300 × 200)', () => {
    const a = restAnswer(system, 6e6);
    expect(a.pools).toHaveLength(1);
    expectWithin(a.pools[0]?.surface, 100, 1e-9);
  });

  it('under a lid at depth 50 from x 100 to 300 keeps 8.0 L of 12 at 1 g', () => {
    const lidded = createOilSystem(
      buildPan(
        stepDesign((d) => {
          d.engine.crankcaseTop = 350;
          d.baffles = [
            {
              kind: 'lid',
              name: 'lid',
              down: 50,
              rear: 100,
              front: 300,
              span: null,
              fixed: 'bolted',
              thickness: 0,
              holes: [],
            },
          ];
        }),
      ),
    );
    const a = rampAnswer(lidded, 12e6, load(-1), 'held');
    expectWithin(mouthPool(a)?.volume, 8e6, 8e6 * 1e-12);
  });

  it('with a formed lip spills ρ(1 + t − √(1+t²)) lower, to the chords of the bend', () => {
    const rho = 8;
    const formed = createOilSystem(
      buildPan(
        stepDesign((d) => {
          d.pan.joints.welded = [0, 2, 3];
        }),
      ),
    );
    const drop = rho * (1 + 1 - Math.SQRT2);
    const legs = 150 - drop;
    const a = rampAnswer(formed, 6e6, load(-1), 'held');
    // A plane through a formed lip stands drop lower in z at the lip's x; the sump corner stays sharp here.
    const volume = (legs * legs * 200) / 2;
    expectWithin(mouthPool(a)?.volume, volume, legs * 200 * 0.06);
  });
});
