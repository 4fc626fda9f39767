import type { Drawing, DrawnCurve } from '../../design/index.js';
import { arcSegment, dot2, length2, lineSegment, type Segment } from '../../geometry/index.js';
import type { Vec2 } from '../../numeric/index.js';
import type { DrawnFile } from './cut-line.js';
import { type ShopRule, shopRules } from './shop-rule.js';

/** Our own layer of cuts, which a drawing that came from here has. */
const OWN = 'through';

/** What was asked of a drawing brought by the user, and the answers. */
export interface DrawingRules {
  /** Layers looked at as cuts, and all that have lines. */
  readonly cutLayers: readonly string[];
  readonly layers: readonly string[];
  readonly rules: readonly ShopRule[];
  /** What its reader passed over, each a short clause. */
  readonly passedOver: readonly string[];
}

/**
 * The shop's rules for any drawing. Without a layer named, the layer `through` is what is cut, or everything
 * where there is none of that name.
 *
 * @param thickness of the sheet, mm; null where it is not known
 */
export const drawingRules = (
  drawing: Drawing,
  cutLayer: string | null,
  thickness: number | null,
): DrawingRules => {
  const layers = [...new Set(drawing.curves.map(({ layer }) => layer))].sort();
  const wanted = cutLayer ?? (layers.includes(OWN) ? OWN : null);
  const isCut = (layer: string): boolean => wanted === null || layer === wanted;
  return {
    cutLayers: layers.filter(isCut),
    layers,
    rules: shopRules(drawnFile(drawing), { isCut, thickness }).map((rule) =>
      rule.id === 'text' ? wordsRule(rule, drawing, layers, isCut) : rule,
    ),
    passedOver: drawing.passedOver,
  };
};

/** Words on a layer with cuts break the rule; others may still be cut where a block or a whole file is. */
const wordsRule = (
  rule: ShopRule,
  { words }: Drawing,
  layers: readonly string[],
  isCut: (layer: string) => boolean,
): ShopRule => {
  if (rule.status === 'fail') return rule;
  const because = words.includes(null)
    ? 'There are words in its blocks: see that they land on no layer that is cut.'
    : words.some((layer) => layer !== null && !layers.includes(layer) && isCut(layer))
      ? 'There are words on a layer without lines: say in the order that it is not cut.'
      : null;
  if (because !== null) return { ...rule, status: 'warn', value: null, because };
  return { ...rule, because: 'No words lie on a layer that is cut.' };
};

const drawnFile = ({ unit, curves, words }: Drawing): DrawnFile => {
  const size = unit ?? 1;
  const made = curves.map((drawn) => ({ layer: drawn.layer, pieces: piecesOf(drawn, size) }));
  return {
    unit,
    pieces: made.flatMap(({ layer, pieces }) => (pieces ?? []).map((piece) => ({ layer, piece }))),
    texts: words.flatMap((layer) =>
      layer !== null && curves.some((one) => one.layer === layer) ? [layer] : [],
    ),
    curves: made.filter(({ pieces }) => pieces === null).map(({ layer }) => layer),
  };
};

/** Lines and arcs in mm; null for a curve that is neither. */
const piecesOf = ({ curve }: DrawnCurve, size: number): readonly Segment[] | null => {
  const mm = ([x, y]: Vec2): Vec2 => [size * x, size * y];
  if (curve.kind === 'nurbs') return null;
  if (curve.kind === 'straight')
    return curve.points.slice(1).map((to, i) => lineSegment(mm(curve.points[i] as Vec2), mm(to)));
  const { u, v, at, from, to } = curve;
  const [a, b] = [length2(u), length2(v)];
  if (Math.abs(a - b) > 1e-6 * a || Math.abs(dot2(u, v)) > 1e-6 * a * b) return null;
  const point = (t: number): Vec2 =>
    mm([at[0] + u[0] * Math.cos(t) + v[0] * Math.sin(t), at[1] + u[1] * Math.cos(t) + v[1] * Math.sin(t)]);
  // Turned the other way where the second axis lies to the right of the first.
  const way = u[0] * v[1] - u[1] * v[0] < 0 ? -1 : 1;
  const halves = Math.abs(to - from) > Math.PI ? 2 : 1;
  return Array.from({ length: halves }, (_, k): Segment => {
    const [p, q] = [from + ((to - from) * k) / halves, from + ((to - from) * (k + 1)) / halves];
    return arcSegment(mm(at), point(p), point(q), way * (q - p));
  });
};
