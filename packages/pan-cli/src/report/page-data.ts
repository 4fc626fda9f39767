import {
  buildPan,
  checkDesign,
  createOilSystem,
  cutParts,
  type Design,
  dipstickReport,
  fitRows,
  inventoryOf,
  limitRing,
  limitsReport,
  type Mesh,
  materialCautions,
  namedManoeuvre,
  obstaclePictures,
  oilIn,
  PanError,
  panelsOf,
  panSeams,
  panSkin,
  partsInPlace,
  platesOf,
  type ReadDesign,
  SAYINGS,
  type SurgeReport,
  surgeReport,
  type Vec3,
  type WeldStep,
  weldSteps,
} from 'pan-core';
import { surenessOf } from '../commands/sureness.js';
import type { PageData, PageMesh } from '../page/data.js';
import { pagePart } from './page-part.js';

/** A tenth of a millimetre is as fine as a picture shows. */
const short = (v: number): number => Math.round(v * 10) / 10;

/** Triangles shown of one measured surface. */
const SCAN_SHOWN = 3000;

const meshData = (name: string, { points, triangles }: Mesh): PageMesh => ({
  name,
  points: points.flatMap((p) => p.map(short)),
  triangles: triangles.flat(),
});

/** Series to a thousandth of a second, degree, g, mm and litre, which is more than a curve shows. */
const shortSeries = (surge: SurgeReport): SurgeReport => ({
  ...surge,
  cases: surge.cases.map((one) => ({
    ...one,
    series: JSON.parse(
      JSON.stringify(one.series, (_, v: unknown) => (typeof v === 'number' ? Math.round(v * 1e3) / 1e3 : v)),
    ),
  })),
});

const shortPoints = (points: readonly Vec3[]): readonly Vec3[] =>
  points.map(([x, y, z]): Vec3 => [short(x), short(y), short(z)]);

/** Of a seam's lines the page draws the one where the torch runs. */
const shortLines = (step: WeldStep): WeldStep => ({
  ...step,
  seams: step.seams.map((seam) => ({
    ...seam,
    lines: seam.lines.map(({ face }) => ({ root: [], face: shortPoints(face) })),
  })),
});

/** A result, or the words of why there is none. */
const orWhy = <T>(ask: () => T): { readonly value: T | null; readonly why: string } => {
  try {
    return { value: ask(), why: '' };
  } catch (error) {
    if (error instanceof PanError) return { value: null, why: error.message };
    throw error;
  }
};

/** The design without what only distances need: the page asks about oil, and has pictures of the rest. */
const withoutObstacles = (design: Design): Design => ({
  ...design,
  chassis: { ...design.chassis, obstacles: [] },
});

/**
 * Everything a page shows that it does not work out itself.
 *
 * @param tell share of the work done, 0–1
 */
export const pageData = async (
  read: ReadDesign,
  version: string,
  tell: (share: number) => void = () => {},
): Promise<PageData> => {
  const { design, assumed } = read;
  const check = checkDesign(read);
  tell(0.2);
  const model = buildPan(design);
  const system = createOilSystem(model);
  const running = check.oil.running_in_pan_L * 1e6;
  const limits = limitsReport(
    read,
    system,
    running,
    limitRing(system, running),
    (manoeuvre) => inventoryOf(oilIn(design.oil, manoeuvre)).runningInPan,
  );
  tell(0.35);
  const fit = fitRows(design, model);
  tell(0.5);
  const surge = orWhy(() => surgeReport(system, design.manoeuvres.map(namedManoeuvre), {}));
  tell(0.85);
  const dipstick = design.dipstick === null ? null : orWhy(() => dipstickReport(read, system)).value;
  const skin = panSkin(model);
  const parts = orWhy(() => cutParts(design, model.profile, platesOf(model), panelsOf(model)));
  const standing = await partsInPlace(model, skin);
  tell(0.95);
  return {
    version,
    title: design.title,
    design: withoutObstacles(design),
    check,
    limits,
    fit,
    dipstick,
    rests_on: surenessOf(['stick_marks', 'limit_g', 'least_fill_L', 'surge_s'], 'running', assumed).rests_on,
    surge: surge.value === null ? null : shortSeries(surge.value),
    surgeMissing: surge.why,
    pan: standing.map(({ name, mesh }) => meshData(name, mesh)),
    obstacles: obstaclePictures(design, SCAN_SHOWN).map(({ name, mesh, thinned }) => ({
      ...meshData(name, mesh),
      thinned,
    })),
    parts: (parts.value ?? []).map(pagePart),
    partsMissing: parts.why,
    weld: weldSteps(design, panSeams(model, skin, parts.value ?? [])).map(shortLines),
    cautions: [
      ...Object.values(SAYINGS).map((saying) => `${saying}.`),
      ...materialCautions(design.pan.sheet.material),
    ],
  };
};
