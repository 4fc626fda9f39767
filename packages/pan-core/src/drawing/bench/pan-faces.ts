import { framePoint } from '../../geometry/index.js';
import { dot3, type Vec2, type Vec3 } from '../../numeric/index.js';
import { convexParts, type PanModel, platesOf } from '../../pan/index.js';
import { isSheet, type Skin, skinParts } from '../../weld/index.js';
import type { ViewFace } from './pan-view.js';

/** Faces that turn less from one another are one flat face; those that turn more meet at a corner: cosines. */
const FLAT = Math.cos(1e-6);
const CORNER = Math.cos((25 * Math.PI) / 180);

/** The pan's sheet and its baffles as faces of a picture, pan axes; thickness is left out. */
export const panFaces = (model: PanModel, skin: Skin): readonly ViewFace[] => [
  ...sheetFaces(model, skin),
  ...platesOf(model).flatMap((plate) =>
    plate.outlines.flatMap((outline) => {
      const edges = new Set(outline.map((p, i) => edgeKey(p, outline[(i + 1) % outline.length] as Vec2)));
      return convexParts(outline).map(
        (part): ViewFace => ({
          name: plate.baffle.name,
          outward: null,
          loop: part.map((p) => framePoint(plate, p)),
          edges: part.map((p, i) =>
            edges.has(edgeKey(p, part[(i + 1) % part.length] as Vec2)) ? 'drawn' : null,
          ),
        }),
      );
    }),
  ),
];

const edgeKey = (a: Vec2, b: Vec2): string => `${a[0]} ${a[1]} ${b[0]} ${b[1]}`;

const sheetFaces = (model: PanModel, skin: Skin): readonly ViewFace[] => {
  const { keyOf, partOf } = skinParts(model, skin);
  const pieces = skin.pieces.filter(isSheet);
  const over = new Map<string, Vec3>();
  for (const { loop, normal } of pieces)
    loop.forEach((a, i) => {
      over.set(`${loop[(i + 1) % loop.length]} ${a}`, normal);
    });
  return pieces.map(
    (piece): ViewFace => ({
      name: partOf(keyOf(piece)),
      outward: piece.normal,
      loop: piece.loop.map((place) => skin.points[place] as Vec3),
      edges: piece.loop.map((a, i) => {
        const other = over.get(`${a} ${piece.loop[(i + 1) % piece.loop.length]}`);
        if (other === undefined) return 'drawn';
        const turn = dot3(other, piece.normal);
        return turn > FLAT ? null : turn < CORNER ? 'drawn' : { beyond: other };
      }),
    }),
  );
};
