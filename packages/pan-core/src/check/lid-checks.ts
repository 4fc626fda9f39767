import type { Design, Lid } from '../design/index.js';
import { GRAVITY, inventoryOf, type OilSystem, restAnswer, SHARP_DISCHARGE } from '../oil/index.js';
import type { Opening } from '../pan/index.js';
import type { Check } from './report.js';
import { judge, limitFor } from './row.js';

/**
 * Oil that may stay on a lid or tray at rest, L, and head that may stand on a tray while it drains, mm.
 * Both common practice, no source.
 */
const HELD = 0.05;
const HEAD = 5;

/** Whether lids and trays let their oil off: what stays on them at rest, and how high it stands at full flow. */
export const lidChecks = (design: Design, system: OilSystem): readonly Check[] => {
  const lids = design.baffles.flatMap((b, index) => (b.kind === 'lid' ? [{ lid: b, index }] : []));
  if (lids.length === 0) return [];
  const { hollows } = restAnswer(system, inventoryOf(design.oil).stoppedInPan).rest;
  const held = lids.map(({ lid, index }) => {
    const above = new Set(system.model.blocked.filter((b) => b.baffle === index).map((b) => b.cell));
    return { lid, value: [...above].reduce((sum, cell) => sum + (hollows[cell] ?? 0), 0) / 1e6 };
  });
  const worst = held.reduce((a, b) => (b.value > a.value ? b : a));
  return [
    judge({
      id: 'lid_hollow',
      group: 'oil',
      title: 'oil that stays on lid or tray',
      unit: 'L',
      value: worst.value,
      limit: limitFor(design.limits, ['lid_hollow'], HELD),
      wants: 'at most',
      miss: 'warn',
      because: `On ${worst.lid.name}, stopped, installed tilt: what cannot run off an edge or through an opening.`,
      fix: 'Slots along the edge that is lowest in the car: slots with along, count and size.',
    }),
    ...headChecks(
      design,
      system,
      lids.filter(({ lid }) => lid.tray === true),
    ),
  ];
};

/**
 * Head over an opening in a thin plate that passes the pump’s whole flow: h = (Q/(C_d·A))²/2g, textbook orifice
 * with the C_d of a sharp edge; mm, mm³/s, mm². Warm oil: cold oil passes less, and stands higher.
 */
const headChecks = (
  design: Design,
  { model }: OilSystem,
  trays: readonly { readonly lid: Lid; readonly index: number }[],
): readonly Check[] => {
  if (trays.length === 0) return [];
  const { pump } = design.oil;
  const open = trays.map(({ lid, index }) => {
    const ways = model.openings.filter((o) => o.baffle === index);
    const area = (kinds: readonly Opening[]): number => kinds.reduce((sum, o) => sum + o.area, 0);
    return { lid, cut: area(ways.filter((o) => o.kind === 'hole')), all: area(ways) };
  });
  const least = open.reduce((a, b) => (b.all < a.all ? b : a));
  const speed =
    pump === null ? null : least.all > 0 ? pump / (SHARP_DISCHARGE * least.all) : Number.MAX_VALUE;
  return [
    judge({
      id: 'tray_drain',
      group: 'oil',
      title: `oil standing on ${least.lid.name}`,
      unit: 'mm',
      value: speed === null ? null : Math.min(speed ** 2 / (2 * GRAVITY), MOST_HEAD),
      limit: limitFor(design.limits, ['tray_drain'], HEAD),
      wants: 'at most',
      miss: 'warn',
      because: `The pump’s whole flow, warm oil, engine level, through ${(least.cut / 100).toFixed(0)} cm² of slots and louvres and ${((least.all - least.cut) / 100).toFixed(0)} cm² beside the tray.`,
      fix: 'More or longer louvres or slots, or more room beside the tray.',
    }),
  ];
};

/** Printed for a tray with next to no way through it, mm. */
const MOST_HEAD = 1000;
