import type { Baffle, Design, Load, Wall } from 'pan-core/design/index.js';
import { PanError } from 'pan-core/errors/index.js';
import { createOilSystem, type OilAnswer, rampAnswer, restAnswer } from 'pan-core/oil/index.js';
import { buildPan } from 'pan-core/pan/index.js';
import { describe, expect, it } from 'vitest';
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

/** The same pan seen in a mirror: left is right. */
const mirrored = (design: Design): Design => {
  const flip = (b: Baffle): Baffle => {
    const span = (s: readonly [number, number] | null): readonly [number, number] | null =>
      s === null ? null : [-s[1], -s[0]];
    if (b.kind === 'lid')
      return { ...b, span: span(b.span), holes: b.holes.map((h) => ({ ...h, at: [h.at[0], -h.at[1]] })) };
    const turned: Wall =
      b.run === 'across'
        ? { ...b, span: span(b.span), doors: b.doors.map((d) => ({ ...d, at: -d.at })) }
        : { ...b, at: -b.at };
    return turned;
  };
  return {
    ...design,
    engine: {
      ...design.engine,
      tilt:
        design.engine.tilt === null
          ? null
          : { ...design.engine.tilt, leanLeft: -design.engine.tilt.leanLeft },
    },
    pan: {
      ...design.pan,
      left: design.pan.right,
      right: design.pan.left,
      wings: design.pan.wings.map((w) => ({ ...w, side: w.side === 'left' ? 'right' : 'left' })),
      notches: design.pan.notches.map((n) =>
        n.kind === 'box'
          ? { ...n, min: [n.min[0], -n.max[1], n.min[2]], max: [n.max[0], -n.min[1], n.max[2]] }
          : n,
      ),
    },
    pickup: { ...design.pickup, at: [design.pickup.at[0], -design.pickup.at[1]] },
    baffles: design.baffles.map(flip),
  };
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
