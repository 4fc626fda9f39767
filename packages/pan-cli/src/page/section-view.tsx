import {
  flatOn,
  type LevelledRoom,
  type MetalSlice,
  type PanModel,
  type Point2,
  type RoomSlice,
  sliceMetal,
  sliceOil,
  sliceRooms,
} from 'pan-core';
import type { ComponentChildren } from 'preact';
import { surfaceEdges } from './surface-edges.js';
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
  const [u, v] = flatOn(plane, centre);
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

export const place = ([x, y]: Point2): string => `${x.toFixed(1)} ${(-y).toFixed(1)}`;
const path = (points: readonly Point2[]): string => `M${points.map(place).join('L')}Z`;
const strokes = (segments: readonly (readonly [Point2, Point2])[]): string =>
  segments.map(([a, b]) => `M${place(a)}L${place(b)}`).join('');

const LINE: Readonly<Record<string, string>> = { block: 'block', flange: 'block', baffle: 'baffle' };

/** One room's oil: washed and hatched, with a line where its surface is. */
const RoomOil = ({ still, room, ghost }: { still: StillSection; room: LevelledRoom; ghost: boolean }) => {
  const wet = sliceOil(still.rooms, still.plane, { up: room.up, pools: [room] });
  const outlines = wet.map(({ outline }) => path(outline)).join('');
  const surface = strokes(wet.flatMap((one) => surfaceEdges(one, still.rooms)));
  if (ghost) return <path class="ghost" d={surface} />;
  const whose = room.hasPickup ? 'mine' : 'apart';
  return (
    <>
      <path class={`oil ${whose}`} d={outlines} />
      <path class={`hatch ${whose}`} d={outlines} />
      <path class="surface" d={surface} />
    </>
  );
};

/** Oil in a section of the pan, and the words that say it for who cannot see it. */
export const SectionView = ({
  still,
  rooms,
  covered,
  words,
  ghost = [],
  children,
}: {
  still: StillSection;
  rooms: readonly LevelledRoom[];
  /** The mouth is under oil. */
  covered: boolean;
  words: string;
  /** Other oil, its surfaces alone. */
  ghost?: readonly LevelledRoom[];
  /** What stands round the pan. */
  children?: ComponentChildren;
}) => {
  const { plane, metal, mouth } = still;
  const { low, high } = plane;
  const size = [high[0] - low[0], high[1] - low[1]] as const;
  return (
    <svg
      class="section"
      font-size={(Math.max(size[0], 1.6 * size[1]) / 42).toFixed(1)}
      viewBox={`${low[0].toFixed(1)} ${(-high[1]).toFixed(1)} ${size[0].toFixed(1)} ${size[1].toFixed(1)}`}
      role="img"
      aria-label={words}
    >
      <title>{words}</title>
      {children}
      <path class="room" d={still.rooms.map(({ outline }) => path(outline)).join('')} />
      {rooms.map((room, i) => (
        <RoomOil key={i} still={still} room={room} ghost={false} />
      ))}
      {ghost.map((room, i) => (
        <RoomOil key={i} still={still} room={room} ghost />
      ))}
      {metal.map(({ owner, segments }, i) => (
        <path key={i} class={LINE[owner] ?? 'sheet'} d={strokes(segments)} />
      ))}
      <line class="rail" x1={low[0]} x2={high[0]} y1={0} y2={0} />
      <line
        class={`mouth ${covered ? 'covered' : 'bared'}`}
        x1={mouth[0][0]}
        x2={mouth[1][0]}
        y1={-mouth[0][1]}
        y2={-mouth[1][1]}
      />
      <text class="end top" x={low[0] + 4} y={-high[1] + 3}>
        {plane.ends[0]}
      </text>
      <text class="end top" x={high[0] - 4} y={-high[1] + 3} text-anchor="end">
        {plane.ends[1]}
      </text>
    </svg>
  );
};
