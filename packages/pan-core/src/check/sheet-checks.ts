import type { Design } from '../design/index.js';
import { type PanModel, panelsOf, platesOf } from '../pan/index.js';
import { cutParts, doorFindings, type SheetFinding, sheetFindings } from '../sheet/index.js';
import type { Check } from './report.js';
import { marginOf } from './row.js';

/** Can it be folded, cut and bolted: the sheet's own findings as checks. */
export const sheetChecks = (design: Design, model: PanModel): readonly Check[] => {
  // Panels only tell the shapes of notches and where a bung is; without either they need not be merged.
  const panels = design.pan.notches.length > 0 || design.bungs.length > 0 ? panelsOf(model) : [];
  const plates = platesOf(model);
  const parts = cutParts(design, model.profile, plates, panels);
  return [...sheetFindings(design, model.profile, parts, panels), ...doorFindings(design, plates)].map(
    asCheck,
  );
};

const asCheck = (f: SheetFinding): Check => {
  const distance = f.value === null || f.limit === null ? 0 : Math.abs(f.value - f.limit);
  const held = f.status === 'pass';
  return {
    ...f,
    group: 'sheet',
    margin: marginOf(held ? distance : -distance, f.unit, f.limit ?? 0),
  };
};
