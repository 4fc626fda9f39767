import {
  type MetalSlice,
  type OilAnswer,
  type PanModel,
  type Point2,
  type RoomSlice,
  sliceMetal,
  sliceOil,
  sliceRooms,
} from 'pan-core';
import type { ViewPlane } from './view-plane.js';

/** What stays the same in a section while the oil moves. */
export interface StillSection {
  readonly plane: ViewPlane;
  readonly rooms: readonly RoomSlice[];
  readonly metal: readonly MetalSlice[];
  /** The mouth as a stroke in the plane's axes. */
  readonly mouth: readonly [Point2, Point2];
}

export const stillSection = (model: PanModel, plane: ViewPlane): StillSection => {
  const { centre, radius } = model.mouth;
  const flat = (axis: readonly [number, number, number]): number =>
    centre.reduce((sum, v, k) => sum + (v - (plane.at[k] as number)) * (axis[k] as number), 0);
  const [u, v] = [flat(plane.right), flat(plane.upward)];
  return {
    plane,
    rooms: sliceRooms(model, plane),
    metal: sliceMetal(model, plane),
    mouth: [
      [u - radius, v],
      [u + radius, v],
    ],
  };
};

const place = ([x, y]: Point2): string => `${x.toFixed(1)} ${(-y).toFixed(1)}`;
const path = (points: readonly Point2[]): string => `M${points.map(place).join('L')}Z`;

const LINE: Readonly<Record<string, string>> = { block: 'block', flange: 'block', baffle: 'baffle' };

/** The oil of an answer in a section, and the words that say it for who cannot see it. */
export const SectionView = ({
  still,
  answer,
  words,
  ghost,
}: {
  still: StillSection;
  answer: OilAnswer | null;
  words: string;
  /** Oil of another answer, as an outline. */
  ghost?: OilAnswer | null;
}) => {
  const { plane, rooms, metal, mouth } = still;
  const [low, high] = [plane.low, plane.high];
  const size = [high[0] - low[0], high[1] - low[1]] as const;
  const oil = answer === null ? [] : sliceOil(rooms, plane, answer);
  const rest = ghost == null ? [] : sliceOil(rooms, plane, ghost);
  return (
    <svg
      class="section"
      viewBox={`${low[0].toFixed(1)} ${(-high[1]).toFixed(1)} ${size[0].toFixed(1)} ${size[1].toFixed(1)}`}
      role="img"
      aria-label={words}
    >
      <title>{words}</title>
      {rooms.map(({ cell, outline }) => (
        <path key={cell} class="room" d={path(outline)} />
      ))}
      {oil.map(({ cell, pool, outline }) => (
        <path
          key={cell}
          class={`oil ${answer?.pools[pool]?.hasPickup === true ? 'mine' : 'apart'}`}
          d={path(outline)}
        />
      ))}
      {rest.map(({ cell, outline }) => (
        <path key={cell} class="ghost" d={path(outline)} />
      ))}
      {metal.map(({ owner, segments }, i) => (
        <path
          key={i}
          class={LINE[owner] ?? 'sheet'}
          d={segments.map(([a, b]) => `M${place(a)}L${place(b)}`).join('')}
        />
      ))}
      <line class="rail" x1={low[0]} x2={high[0]} y1={0} y2={0} />
      <line
        class={`mouth ${answer === null || answer.pickup.covered ? 'covered' : 'bared'}`}
        x1={mouth[0][0]}
        x2={mouth[1][0]}
        y1={-mouth[0][1]}
        y2={-mouth[1][1]}
      />
      <text class="end" x={low[0] + 4} y={-high[1] + 14}>
        {plane.ends[0]}
      </text>
      <text class="end" x={high[0] - 4} y={-high[1] + 14} text-anchor="end">
        {plane.ends[1]}
      </text>
    </svg>
  );
};
