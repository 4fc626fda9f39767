import type { Design } from '../design/index.js';
import type { Seam, SeamStep } from './seam.js';

/** Common practice, no source: tacks and stitches, mm, and the flatness to end with, mm per mm. */
export const PRACTICE = Object.freeze({
  tackPitch: [25, 40] as const,
  stitch: [25, 50] as const,
  /** What a drawing's symbol says, out of that range. */
  drawnStitch: 40,
  flatness: 0.1,
  flatnessOver: 300,
});

/** One step of the weld plan. */
export interface WeldStep {
  readonly title: string;
  readonly lines: readonly string[];
  readonly seams: readonly Seam[];
}

/** The order that keeps the flange flat and every inside seam in reach; steps with nothing to do fall out. */
export const weldSteps = (design: Design, seams: readonly Seam[]): readonly WeldStep[] => {
  const of = (step: SeamStep): readonly Seam[] => seams.filter((seam) => seam.step === step);
  const [tackLow, tackHigh] = PRACTICE.tackPitch;
  const [stitchLow, stitchHigh] = PRACTICE.stitch;
  const welded = design.baffles.filter((b) => b.fixed === 'welded');
  const bolted = design.baffles.filter((b) => b.fixed === 'bolted');
  const steps: (WeldStep | null)[] = [
    {
      title: 'Clean and fit up',
      lines: [
        'Never chlorinated cleaner near an arc; clean and vent.',
        'Fold, then offer the parts to each other dry: inside edges touch, corners stand open outside.',
      ],
      seams: [],
    },
    of('plate').length === 0
      ? null
      : {
          title: 'Flange, bolted flat to the strongback',
          lines: plateLines(design),
          seams: of('plate'),
        },
    of('pieces').length === 0
      ? null
      : {
          title: 'Pieces of one part, folded first',
          lines: [
            'Fold each piece, lay both on a flat bar with the witness marks in line, and clamp them down on both sides of the seam.',
            'Run-on and run-off tabs at the ends; tack both ends and the middle, then short runs from the middle outwards, through to the inside.',
            'Dress both faces flush where a side, a baffle or the flange comes to lie on the seam.',
          ],
          seams: of('pieces'),
        },
    {
      title: 'Tack the shell',
      lines: [
        `Tack belly to sides every ${tackLow}–${tackHigh} mm, starting from the middle of each run, ends and sides by turns.`,
        'Slip the flange on loose, bolt it to the strongback, and see that the shell still drops in without force.',
        'Check both diagonals at the rail, and the depth at front, step and rear, before going on.',
      ],
      seams: [],
    },
    of('inside').length === 0
      ? null
      : {
          title: 'Inside, before any lid closes it',
          lines: [
            ...(welded.some((b) => b.kind === 'wall') && welded.some((b) => b.kind === 'lid')
              ? ['Walls first: no seam under a lid can be reached later.']
              : []),
            `Stitch ${stitchLow}–${stitchHigh} mm and miss as much; leave weeps and door edges clear.`,
            ...(welded.some((b) => b.kind === 'lid')
              ? ['Lids last, after every chip and bead of spatter is out.']
              : []),
          ],
          seams: of('inside'),
        },
    {
      title: 'Shell, outside',
      lines: [
        `Runs of ${stitchLow}–${stitchHigh} mm, left and right by turns, from the middle outwards; let each cool to hand-warm.`,
        'Go round every corner without stopping on it.',
      ],
      seams: of('shell'),
    },
    of('bosses').length === 0
      ? null
      : {
          title: 'Bungs',
          lines: [
            'Plug screwed in hand-tight as a heat sink, in two half turns from opposite starts; chase the thread after.',
          ],
          seams: of('bosses'),
        },
    {
      title: 'Flange last, bolted to the strongback',
      lines: [
        clampLine(design),
        `Tack every ${tackLow}–${tackHigh} mm, then runs of ${stitchLow}–${stitchHigh} mm: one end, the other end, one side, the other side.`,
        'Leave it bolted until it is cold.',
        ...(design.pan.flange.endSeals.length === 0
          ? []
          : ['End plates with it: trim the end wall to the arc, then weld along it and dress the arc.']),
        `Then face the rail side flush and measure: flat within ${PRACTICE.flatness.toFixed(2)} mm per ${PRACTICE.flatnessOver} mm (common practice, no source).`,
        ...drillLines(design),
      ],
      seams: of('flange'),
    },
    bolted.length === 0
      ? null
      : {
          title: 'Bolted baffles',
          lines: [
            'Bolts with locking plates or wire, never a spring washer alone: a baffle adrift in the oil ends the engine.',
            `Fit: ${bolted.map((b) => b.name).join(', ')}.`,
          ],
          seams: [],
        },
    {
      title: 'Before it goes on',
      lines: [
        'Leak test as 4-weld/leak-test.txt says.',
        'Turn the crank two full turns by hand with clay on floor, lid and tube; wash out every chip.',
      ],
      seams: [],
    },
  ];
  return steps.filter((step): step is WeldStep => step !== null);
};

/** The plate work that comes first, while everything can still be turned over and reached. */
const plateLines = ({ pan: { flange } }: Design): readonly string[] => [
  ...(flange.split === null
    ? []
    : [
        'Bevel both edges of the joint from both faces, leave a third of the thickness, and bolt the halves to the strongback; nothing is pulled by the bolts.',
        'Short runs by turns: one strip, the other strip, then the other face of each; let it cool bolted down, and dress both faces flush.',
      ]),
  ...(flange.endSeals.length === 0
    ? []
    : [
        'End plates between the flange’s ends, top on the strongback, square to it; tack both ends before either is welded.',
      ]),
];

const clampLine = ({ pan: { flange } }: Design): string =>
  flange.drillAfterWeld.length === 0
    ? 'Every bolt tight, strongback on the rail face, a strip of gasket sheet between.'
    : 'Every bolt that has its hole tight, a C-clamp at each ring that is drilled later, strongback on the rail face.';

const drillLines = ({ pan: { flange } }: Design): readonly string[] => {
  const { drillAfterWeld } = flange;
  if (drillAfterWeld.length === 0) return [];
  return [
    `Drill the ${drillAfterWeld.length} marked holes through the strongback, cold and faced, sizes in 3-bench/drill-table.csv; try them on the block before the pan is washed.`,
  ];
};
