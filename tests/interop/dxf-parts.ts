import type { Path, Segment } from 'pan-core/geometry/index.js';
import type { Vec2 } from 'pan-core/numeric/index.js';
import type { Part } from 'pan-core/sheet/index.js';

export const polygon = (points: readonly Vec2[]): Path =>
  points.map((from, i) => ({ kind: 'line', from, to: points[(i + 1) % points.length] as Vec2 }));

/** A rectangle with round corners, counter-clockwise from the lower left. */
export const roundedRectangle = (width: number, height: number, r: number): Path => {
  const corner = (cx: number, cy: number, start: number): Segment => {
    const at = (a: number): Vec2 => [cx + r * Math.round(Math.cos(a)), cy + r * Math.round(Math.sin(a))];
    return {
      kind: 'arc',
      from: at(start),
      to: at(start + Math.PI / 2),
      centre: [cx, cy],
      radius: r,
      sweep: Math.PI / 2,
    };
  };
  const arcs = [
    corner(width - r, r, -Math.PI / 2),
    corner(width - r, height - r, 0),
    corner(r, height - r, Math.PI / 2),
    corner(r, r, Math.PI),
  ];
  return arcs.flatMap((arc, i): Segment[] => {
    const next = arcs[(i + 1) % 4] as Segment;
    return [arc, { kind: 'line', from: arc.to, to: next.from }];
  });
};

/** A circle as one arc of a full turn, clockwise. */
export const circleCut = (x: number, y: number, r: number): Path => [
  { kind: 'arc', from: [x + r, y], to: [x + r, y], centre: [x, y], radius: r, sweep: -2 * Math.PI },
];

const base: Part = {
  name: 'plate',
  what: 'a plate with round corners',
  quantity: 1,
  material: 'aluminium 5052-H32',
  thickness: 3,
  drawnFace: 'either',
  outline: roundedRectangle(300, 200, 20),
  openings: [],
  holes: [],
  folds: [],
  marks: [],
  notes: [],
  flat: [300, 200],
  area: 300 * 200 - (4 - Math.PI) * 400,
  cutLength: 2 * (300 + 200) - 8 * 20 + 2 * Math.PI * 20,
  mass: 0.48,
};

export const plate = (change: Partial<Part> = {}): Part => ({ ...base, ...change });

/** A strip with two folds, a slot, a row of holes and a mark. */
export const strip = (): Part =>
  plate({
    name: 'belly',
    what: 'the folded floor from flange to flange',
    drawnFace: 'oil side',
    outline: polygon([
      [0, 0],
      [900, 0],
      [900, 190],
      [0, 190],
    ]),
    openings: [
      [...roundedRectangle(60, 20, 10)].map((piece) => shift(piece, 500, 80)),
      circleCut(200, 95, 14),
    ].map((path, i) => (i === 0 ? reverse(path) : path)),
    holes: [100, 300, 700].map((x) => ({ at: [x, 30] as Vec2, diameter: 9, what: 'bolt hole' })),
    folds: [
      {
        name: 'fold 1',
        from: [250, 0],
        to: [250, 190],
        angle: Math.PI / 2,
        radius: 5,
        direction: 'up',
        allowance: 9.9,
      },
      {
        name: 'fold 2',
        from: [420, 190],
        to: [420, 0],
        angle: 1.2,
        radius: 5,
        direction: 'down',
        allowance: 7.5,
      },
    ],
    marks: [{ path: [{ kind: 'line', from: [600, 10], to: [600, 180] }], what: 'door wall stands here' }],
    notes: ['Transfer the holes from the block.'],
    flat: [900, 190],
  });

const move = ([x, y]: Vec2, dx: number, dy: number): Vec2 => [x + dx, y + dy];

const shift = (piece: Segment, dx: number, dy: number): Segment =>
  piece.kind === 'line'
    ? { ...piece, from: move(piece.from, dx, dy), to: move(piece.to, dx, dy) }
    : {
        ...piece,
        from: move(piece.from, dx, dy),
        to: move(piece.to, dx, dy),
        centre: move(piece.centre, dx, dy),
      };

const reverse = (path: Path): Path =>
  [...path]
    .reverse()
    .map((piece) =>
      piece.kind === 'line'
        ? { ...piece, from: piece.to, to: piece.from }
        : { ...piece, from: piece.to, to: piece.from, sweep: -piece.sweep },
    );
