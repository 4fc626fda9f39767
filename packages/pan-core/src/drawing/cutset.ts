import type { CheckReport } from '../check/index.js';
import { areaVector } from '../geometry/index.js';
import type { Vec3 } from '../numeric/index.js';
import type { PanModel } from '../pan/index.js';
import type { Part } from '../sheet/index.js';
import { panSeams, panSkin, SAYINGS, type Skin } from '../weld/index.js';
import { assemblySheets } from './bench/assembly-sheet.js';
import { seamsOf } from './bench/part-seams.js';
import { shopDrawing } from './bench/shop-drawing.js';
import { type CutPlan, cutPlan, materialCautions } from './cut-plan.js';
import { requireCuttable } from './dxf/cut-check.js';
import { barePartDxf, partDxf, type SheetWords } from './dxf/dxf-part.js';
import { drillTable, foldList, laserOrder } from './list/bench-words.js';
import { boughtList, cutList } from './list/buy-words.js';
import { costOf } from './list/cost.js';
import { costText } from './list/cost-words.js';
import { mockUpCautions, pieceList } from './list/mock-up-words.js';
import { prepLines, seamTable } from './list/seam-words.js';
import { rulesTable } from './list/shop-rule-words.js';
import { tubeList } from './list/tube-words.js';
import { cautionText, leakTest, weldOrder } from './list/weld-words.js';
import { manifestText } from './manifest.js';
import { bareNestDxf, nestDxf } from './nest/nest-dxf.js';
import { type NestGroup, nestGroups } from './nest/nest-group.js';
import { nestPages } from './nest/nest-page.js';
import type { PagePrinter, Paper } from './page/page.js';
import { readFirst } from './read-first.js';
import { safeNames } from './safe-name.js';
import { partsInPlace } from './solid/in-place.js';
import { type Mesh, meshVolume } from './solid/mesh.js';
import { mockUpPieces } from './solid/mock-up-piece.js';
import { hollowSolid, insideSolid, outsideSolid } from './solid/pan-solid.js';
import { plateSolid } from './solid/plate-solid.js';
import { writeStl } from './solid/stl-file.js';
import { templates } from './template/templates.js';

/** A file of a cut set, by its place in the set with forward slashes. */
export interface CutFile {
  readonly path: string;
  readonly content: string | Uint8Array;
}

/** What pages are printed on, and by. */
export interface PrintRule {
  readonly paper: Paper;
  readonly print: PagePrinter;
}

/**
 * Every file of a cut set, `manifest.json` last. Nothing is written; the same input gives the same bytes.
 *
 * @throws PanError `sheet-cut` for a part that cannot be cut
 */
export const cutSet = async (
  model: PanModel,
  parts: readonly Part[],
  report: CheckReport,
  { paper, print }: PrintRule,
): Promise<readonly CutFile[]> => {
  for (const part of parts) requireCuttable(part);
  const skin = panSkin(model);
  const plan = cutPlan(model.design, parts, panSeams(model, skin, parts), report);
  const inside = insideSolid(skin);
  const nests = await nestGroups(plan);
  const cost = costOf(plan, nests);
  const files = [
    { path: '00-read-first.txt', content: readFirst(plan) },
    ...(await mockUps(plan, model, skin, inside)),
    { path: '1-mock-up/cautions.txt', content: mockUpCautions(plan) },
    { path: '1-mock-up/templates.pdf', content: await print(templates(plan, paper)) },
    ...drawings(plan),
    ...nestDrawings(plan, nests),
    { path: '2-laser/nests/sheets.pdf', content: await print(nestPages(plan, nests, paper)) },
    { path: '2-laser/rules.csv', content: rulesTable(plan, nests) },
    { path: '2-laser/order.txt', content: laserOrder(plan, nests) },
    ...(await shopDrawings(plan, paper, print)),
    { path: '3-bench/folds.txt', content: foldList(plan) },
    { path: '3-bench/drill-table.csv', content: drillTable(plan) },
    { path: '3-bench/pickup-tube.txt', content: tubeList(plan, model.profile) },
    { path: '4-weld/assembly.pdf', content: await print(assemblySheets(plan, model, skin, paper)) },
    { path: '4-weld/order.txt', content: weldOrder(plan) },
    { path: '4-weld/seams.csv', content: seamTable(plan) },
    { path: '4-weld/cautions.txt', content: cautionText(plan) },
    { path: '4-weld/leak-test.txt', content: leakTest(plan, meshVolume(inside), openArea(skin)) },
    { path: '5-buy/cut-list.csv', content: cutList(plan) },
    { path: '5-buy/bought.txt', content: boughtList(plan) },
    { path: '5-buy/cost.txt', content: costText(plan, cost) },
  ];
  return [
    ...files,
    {
      path: 'manifest.json',
      content: manifestText(
        plan,
        nests,
        cost,
        files.map((file) => file.path),
      ),
    },
  ];
};

const mockUps = async (
  plan: CutPlan,
  model: PanModel,
  skin: Skin,
  inside: Mesh,
): Promise<readonly CutFile[]> => {
  const stl = (file: string, mesh: Mesh, what: string): CutFile => ({
    path: `1-mock-up/${file}.stl`,
    content: writeStl(mesh, plan.warning === null ? what : `NOT READY TO CUT, ${what}`),
  });
  const plates: CutFile[] = [];
  for (const { part, file } of plan.parts)
    plates.push(stl(`plate-${file}`, await plateSolid(part), part.name));
  const standing = await partsInPlace(model, skin);
  const names = safeNames(standing.map((piece) => piece.name));
  const inPlace = standing.map(({ name, mesh }, i) =>
    stl(`in-place/${names[i]}`, mesh, `${name}, in its place`),
  );
  const { thickness } = plan.design.pan.sheet;
  const outside = outsideSolid(skin, thickness);
  return [
    stl('pan-sheet', hollowSolid(skin, 0, thickness), 'sheet of the pan at its own thickness'),
    stl('pan-outside', outside, 'outside of the pan'),
    stl('pan-inside', inside, 'inside of the pan'),
    ...inPlace,
    ...plates,
    ...printed(plan, skin),
  ];
};

/** The pan as a light shell in pieces that the printer's bed takes. */
const printed = (plan: CutPlan, skin: Skin): readonly CutFile[] => {
  const { pan, shop } = plan.design;
  const { thickness } = pan.sheet;
  const { bed, wall } = shop.printer;
  const pieces = mockUpPieces(hollowSolid(skin, thickness - wall, thickness), bed, wall);
  const names = safeNames(pieces.map(({ name }) => name));
  const warned = plan.warning === null ? '' : 'NOT READY TO CUT, ';
  return [
    ...pieces.map(({ name, mesh }, i) => ({
      path: `1-mock-up/print/${names[i]}.stl`,
      content: writeStl(mesh, `${warned}${name} of ${pieces.length} of the mock-up`),
    })),
    { path: '1-mock-up/print/pieces.txt', content: pieceList(plan, pieces, names) },
  ];
};

const sheetWords = ({ title, warning }: CutPlan, material: string): SheetWords => ({
  title,
  warning,
  sentences: [`${SAYINGS.cut}.`, ...materialCautions(material)],
});

const nestDrawings = (plan: CutPlan, nests: readonly NestGroup[]): readonly CutFile[] =>
  nests.flatMap((group) =>
    group.sheets.flatMap((laid) => {
      const words = sheetWords(plan, group.material);
      return [
        { path: `2-laser/nests/${laid.file}.dxf`, content: nestDxf(group, laid, words) },
        { path: `2-laser/nests/bare/${laid.file}.dxf`, content: bareNestDxf(group, laid, words) },
      ];
    }),
  );

const drawings = (plan: CutPlan): readonly CutFile[] =>
  plan.parts.flatMap(({ part, file }) => {
    const plain = sheetWords(plan, part.material);
    const edges = prepLines(seamsOf(plan, part)).map((line) => `Edges, ${line}`);
    const words = { ...plain, sentences: [...edges, ...plain.sentences] };
    return [
      { path: `2-laser/${file}.dxf`, content: partDxf(part, words) },
      { path: `2-laser/bare/${file}.dxf`, content: barePartDxf(part, words) },
    ];
  });

const shopDrawings = async (plan: CutPlan, paper: Paper, print: PagePrinter): Promise<readonly CutFile[]> => {
  const drawn: CutFile[] = [];
  for (const named of plan.parts)
    drawn.push({
      path: `3-bench/drawings/${named.file}.pdf`,
      content: await print(shopDrawing(plan, named, paper)),
    });
  return drawn;
};

/** Area open at the rail plane, mm². */
const openArea = (skin: Skin): number =>
  skin.pieces
    .filter((piece) => piece.owner === 'lid')
    .reduce((sum, piece) => sum + areaVector(piece.loop.map((place) => skin.points[place] as Vec3))[2], 0);
