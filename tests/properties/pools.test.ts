import type { Design, Load } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { createOilSystem, type OilAnswer, rampAnswer, restAnswer } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
import { mirrored } from '../mirror-design.js';
import { expectWithin } from '../numbers.js';
import { tellWorst } from '../published/accuracy.js';
import { randomFrom } from '../random.js';
import { randomDesign } from '../random-design.js';

const SEED = 4_711;
const PANS = 160;

const built = (seed: number): { design: Design; seed: number } => {
  for (let s = seed; ; s += 1_000_003) {
    const design = randomDesign(s);
    try {
      createOilSystem(buildPan(design));
      return { design, seed: s };
    } catch (error) {
      if (!(error instanceof PanError)) throw error;
    }
  }
};

const total = (a: OilAnswer): number => a.pools.reduce((s, p) => s + p.volume, 0);
const atMouth = (a: OilAnswer): number => a.pools.find((p) => p.hasPickup)?.volume ?? 0;

describe(`pools of ${PANS} random pans, seed ${SEED}`, () => {
  const r = randomFrom(SEED);
  const cases = Array.from({ length: PANS }, (_, i) => {
    const { design, seed } = built(SEED + i);
    const load: Load = { forward: (r() - 0.5) * 2.4, left: (r() - 0.5) * 2.4, grade: 0 };
    return { design, seed, load, volume: (2 + 5 * r()) * 1e6 };
  });

  it('oil is conserved to 1e-12, at rest, held and settled', () => {
    for (const { design, seed, load, volume } of cases) {
      const system = createOilSystem(buildPan(design));
      expectWithin(total(restAnswer(system, volume)), volume, volume * 1e-12, `rest, seed ${seed}`);
      for (const gating of ['held', 'settled'] as const) {
        expectWithin(
          total(rampAnswer(system, volume, load, gating)),
          volume,
          volume * 1e-12,
          `${gating}, seed ${seed}`,
        );
      }
    }
  });

  it('a mirrored pan in the mirrored manoeuvre keeps the same oil at the mouth', () => {
    let worst = 0;
    for (const { design, seed, load, volume } of cases) {
      const one = createOilSystem(buildPan(design));
      const other = createOilSystem(buildPan(mirrored(design)));
      for (const gating of ['held', 'settled'] as const) {
        const a = rampAnswer(one, volume, load, gating);
        const b = rampAnswer(other, volume, { ...load, left: -load.left }, gating);
        const off = Math.abs(atMouth(a) - atMouth(b));
        worst = Math.max(worst, off);
        expect(off, `${gating}, seed ${seed}, mm³`).toBeLessThan(1e-3);
      }
    }
    tellWorst(
      'Oil at the mouth of a mirrored pan in the mirrored manoeuvre',
      worst,
      1e-3,
      'mm³',
      `${cases.length} random pans, held and settled`,
    );
  });
});
