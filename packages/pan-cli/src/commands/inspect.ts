import { type DrawingRules, drawingRules, PanError, type ShopRule } from 'pan-core';
import { readDrawings } from '../read/drawing/read-drawing.js';
import { inspectScreen } from '../terminal/inspect-screen.js';
import type { Run } from './command.js';
import { optionQuantity } from './option-quantity.js';

/** Holds any drawing against the rules that every drawing of a cut set passes; 1 when it breaks one. */
export const inspect: Run = async ({ file, options }, screen) => {
  const thickness = await optionQuantity(options, 'thickness', 'length', screen.units);
  if (thickness?.problem !== undefined) throw new PanError(thickness.problem);
  const layer = typeof options.layer === 'string' ? options.layer : null;
  const drawings = await readDrawings([{ path: [], name: file }], file === '' ? '.' : './drawing');
  const drawing = drawings[file];
  if (drawing === undefined) throw new Error('a drawing was read and is not there');
  const found = drawingRules(drawing, layer, thickness?.value ?? null);
  if (layer !== null && found.cutLayers.length === 0) throw noLayer(layer, found);
  screen.write(
    screen.json ? `${JSON.stringify(rows(file, found), null, 2)}\n` : inspectScreen(file, found, screen),
  );
  return found.rules.some((rule) => rule.status === 'fail') ? 1 : 0;
};

const noLayer = (layer: string, { layers }: DrawingRules): PanError =>
  new PanError({
    code: 'input-option',
    path: [],
    message: `--layer: nothing is drawn on a layer "${layer.slice(0, 40)}".`,
    found: layer.slice(0, 40),
    expected: layers
      .slice(0, 12)
      .map((name) => name.slice(0, 40))
      .join(', '),
    advice: 'Give one of the layers that have lines, or leave it out.',
  });

const rows = (file: string, { cutLayers, layers, rules, passedOver }: DrawingRules): object => ({
  file,
  layers,
  cut_layers: cutLayers,
  rules: rules.map((rule: ShopRule) => ({
    id: rule.id,
    status: rule.status,
    value: rule.value,
    limit: rule.limit,
    unit: rule.unit,
    because: rule.because,
    at_mm: rule.at,
  })),
  passed_over: passedOver,
});
