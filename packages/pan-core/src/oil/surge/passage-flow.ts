import type { Opening } from '../../pan/index.js';
import type { FlowOpening } from './network.js';
import type { SurgeScene } from './surge-scene.js';

/** What went through a named passage over a run: a door, weep, hole or a baffle's edge. */
export interface PassageFlow {
  readonly name: string;
  readonly kind: Opening['kind'];
  /** Words for the way counted as forth: the cells on either side lie so. */
  readonly way: 'forward' | 'rearward' | 'left' | 'right' | 'up' | 'down';
  /** mm³ */
  readonly forth: number;
  readonly back: number;
}

export const passageFlows = (scene: SurgeScene, y: Float64Array): readonly PassageFlow[] =>
  scene.net.passages.map(({ label, kind }, i): PassageFlow => {
    const w = scene.net.openings.findIndex((o) => o.passage === i);
    return {
      name: label,
      kind,
      way: wayOf(scene, w),
      forth: y[scene.firstLitre + 2 * i] as number,
      back: y[scene.firstLitre + 2 * i + 1] as number,
    };
  });

/** From the middle of the one cell to the middle of the other, along the axis its plane looks to. */
const wayOf = (scene: SurgeScene, w: number): PassageFlow['way'] => {
  const { model } = scene.net.system;
  const { from, to } = scene.net.openings[w] as FlowOpening;
  const { normal } = model.table.planes[(model.openings[w] as Opening).plane] as {
    normal: readonly [number, number, number];
  };
  const axis = [0, 1, 2].reduce((a, b) =>
    Math.abs(normal[b] as number) > Math.abs(normal[a] as number) ? b : a,
  );
  const middle = (cell: number): number => {
    const points = model.cells[cell]?.faces.flatMap((f) => f.loop) ?? [];
    return points.reduce((sum, p) => sum + (p[axis] as number), 0) / points.length;
  };
  const ahead = middle(to) > middle(from);
  return (
    [
      ['forward', 'rearward'],
      ['left', 'right'],
      ['up', 'down'],
    ] as const
  )[axis]?.[ahead ? 0 : 1] as PassageFlow['way'];
};
