import { createRequire } from 'node:module';
import { Worker } from 'node:worker_threads';
import { drawingRefusal } from './drawing-problem.js';
import type { ScreenedDxf } from './dxf-screen.js';

interface DxfPoint {
  readonly x: number;
  readonly y: number;
}

/** An entity as the parser gives it; which keys are there depends on its type. */
export interface DxfEntity {
  readonly type: string;
  readonly layer?: string;
  readonly extendedData?: { readonly customStrings?: readonly string[] };
  readonly vertices?: readonly (DxfPoint & {
    readonly bulge?: number;
    readonly splineControlPoint?: boolean;
  })[];
  readonly shape?: boolean;
  readonly is3dPolyline?: boolean;
  readonly is3dPolygonMesh?: boolean;
  readonly isPolyfaceMesh?: boolean;
  readonly center?: DxfPoint;
  readonly radius?: number;
  readonly startAngle?: number;
  readonly endAngle?: number;
  readonly majorAxisEndPoint?: DxfPoint;
  readonly axisRatio?: number;
  readonly controlPoints?: readonly DxfPoint[];
  readonly knotValues?: readonly number[];
  readonly degreeOfSplineCurve?: number;
  readonly closed?: boolean;
  readonly name?: string;
  readonly position?: DxfPoint;
  readonly xScale?: number;
  readonly yScale?: number;
  readonly rotation?: number;
  readonly columnCount?: number;
  readonly rowCount?: number;
  readonly columnSpacing?: number;
  readonly rowSpacing?: number;
}

export interface DxfBlock {
  readonly name: string;
  readonly position?: DxfPoint;
  readonly entities?: readonly DxfEntity[];
}

export interface ParsedDxf {
  readonly entities: readonly DxfEntity[];
  readonly blocks: Readonly<Record<string, DxfBlock>>;
}

// A broken file can hold the parser for ever, so that it runs where it can be ended.
const PROGRAM = `
const { parentPort, workerData } = require('node:worker_threads');
const Parser = require(workerData.library);
let answer;
try {
  const { entities = [], blocks = {} } = new (Parser.DxfParser ?? Parser)().parseSync(workerData.text);
  answer = { parsed: { entities, blocks } };
} catch (error) {
  answer = { fault: String(error && error.message) };
}
parentPort.postMessage(answer);
`;
const TIME_LIMIT_MS = 10_000;
const MEMORY_LIMIT_MB = 512;

type Answer = { readonly parsed?: ParsedDxf; readonly fault?: string };

/** What a worker made of the text; ends it after `limit` ms, and when it asks for too much memory. */
export const parseDxf = async (
  screened: Pick<ScreenedDxf, 'text' | 'entities'>,
  limit = TIME_LIMIT_MS,
): Promise<ParsedDxf> => {
  const library = createRequire(import.meta.url).resolve('dxf-parser');
  const worker = new Worker(PROGRAM, {
    eval: true,
    workerData: { library, text: screened.text },
    resourceLimits: { maxOldGenerationSizeMb: MEMORY_LIMIT_MB },
  });
  try {
    const answer = await new Promise<Answer>((done) => {
      const timer = setTimeout(() => done({ fault: `it took more than ${limit / 1000} s` }), limit);
      const finish = (answer: Answer): void => {
        clearTimeout(timer);
        done(answer);
      };
      worker.once('message', (message: Answer) => finish(message));
      worker.once('error', (error: unknown) =>
        finish({ fault: error instanceof Error ? error.message : 'its reader stopped' }),
      );
    });
    const { parsed, fault } = answer;
    if (parsed === undefined) throw unread(fault ?? 'its reader stopped');
    if (parsed.entities.length !== screened.entities)
      throw unread(`only ${parsed.entities.length} of ${screened.entities} entities were understood`);
    return parsed;
  } finally {
    await worker.terminate();
  }
};

const unread = (fault: string): Error =>
  drawingRefusal(
    `It could not be read: ${fault.replace(/\s+/g, ' ').slice(0, 120)}.`,
    'Save it again as release R12, or explode its blocks first.',
  );
