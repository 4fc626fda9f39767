import type { Baffle, Design } from 'pan-core/design/index.js';

const deg = (v: number): number => (v * Math.PI) / 180;

/** A design built by hand, so that a test of a layer does not wait on the reader: invented, all mm. */
export const sampleDesign = (change: (d: Mutable<Design>) => void = () => {}): Design => {
  const design: Mutable<Design> = {
    format: 1,
    title: 'Long straight six, invented',
    engine: {
      rail: {
        outline: [
          [0, -125],
          [690, -125],
          [690, 125],
          [0, 125],
        ],
        land: 25,
        seenFrom: 'below',
      },
      railHoles: [
        ...Array.from({ length: 12 }, (_, i) => [15 + (660 * i) / 11, 114] as [number, number]),
        ...Array.from({ length: 12 }, (_, i) => [15 + (660 * i) / 11, -114] as [number, number]),
        ...[-57, 0, 57].flatMap(
          (y) =>
            [
              [11, y],
              [679, y],
            ] as [number, number][],
        ),
      ].map((at) => ({ at, thread: 8 })),
      crankcaseTop: 140,
      crankcaseDisplaced: 0.35,
      crank: {
        centreAboveRail: 62,
        stroke: 96,
        bigEndReach: 41,
        throws: [70, 172, 274, 376, 478, 580],
        throwWidth: 30,
      },
      inside: [],
      tilt: { noseUp: deg(3), leanLeft: 0 },
      topAboveRail: 600,
      pumpInlet: [630, 70, 5],
      plusMinus: 0,
      studs: 0,
      mounts: null,
      flywheel: null,
      bellHousing: null,
      carries: [{ name: 'intake', shape: { kind: 'box', min: [80, 120, 200], max: [620, 330, 600] } }],
    },
    oil: {
      fill: 7.2e6,
      filter: 0.7e6,
      heldUp: 1.2e6,
      galleries: 0.5e6,
      grade: '5W-30',
      sheet: { at40: null, at100: null, index: null, density: null },
      pump: 45e6 / 60,
      cranking: (0.04 * 45e6) / 60,
    },
    pan: {
      sheet: { material: 'aluminium 5052-H32', thickness: 3, bendRadius: 5 },
      floor: [
        [655, 40],
        [320, 58],
        [320, 165],
        [32, 172],
      ],
      left: [
        [32, 95],
        [655, 95],
      ],
      right: [
        [32, 95],
        [655, 95],
      ],
      wings: [
        {
          name: 'wing',
          side: 'right',
          rear: 45,
          front: 300,
          topDown: { rear: 95, front: 95 },
          topFall: 0,
          beyondWall: { rear: 60, front: 60 },
        },
      ],
      notches: [],
      flange: {
        thickness: 10,
        beyond: 0,
        fit: 'medium',
        gasket: 'sealant',
        groove: null,
        dowels: [],
        drillAfterWeld: [],
        lighten: null,
        split: null,
        endSeals: [],
      },
      structural: false,
      joints: {
        welded: [],
        bendTest: null,
        allowance: 'k',
        fold: [],
        weld: [],
        split: { usual: true, whole: [], seams: [] },
      },
      sumpFrom: null,
    },
    pickup: {
      at: [140, 0],
      gap: 8,
      mouth: 60,
      bore: 22,
      wall: 1.5,
      route: [
        [140, 0, -120],
        [205, 50, -60],
        [300, 75, -40],
        [600, 75, -25],
      ],
    },
    baffles: [
      {
        kind: 'lid',
        name: 'lid',
        down: 82,
        rear: 110,
        front: 320,
        span: null,
        fixed: 'bolted',
        thickness: 3,
        holes: [],
      },
      {
        kind: 'wall',
        name: 'door wall',
        run: 'across',
        at: 240,
        span: null,
        topDown: null,
        weep: 4,
        fixed: 'welded',
        thickness: 3,
        doors: [
          { size: [60, 45], at: -45, up: 10, letsOil: 'rearward' },
          { size: [60, 45], at: 45, up: 10, letsOil: 'rearward' },
        ],
        holes: [],
      },
    ] satisfies Baffle[] as Mutable<Baffle>[],
    drain: { at: [62, 0], thread: { diameter: 18, pitch: 1.5 }, bung: 28, plugBelow: 12 },
    bungs: [],
    dipstick: { enters: [320, -90, 20], toward: [255, -75, -150] },
    chassis: {
      axes: 'car',
      ground: -283,
      groundPlusMinus: 0,
      suspension: null,
      moves: { rock: deg(2), up: 4, down: 4, foreAft: 3 },
      body: { rollPerG: deg(3), divePerG: deg(1.5) },
      obstacles: [
        {
          name: 'crossmember',
          shape: { kind: 'box', min: [356, -400, -180], max: [450, 400, -67] },
          clear: 15,
          plusMinus: 2,
        },
        {
          name: 'drag link',
          shape: {
            kind: 'rod',
            from: [500, -300, -95],
            to: [500, 300, -95],
            diameter: 24,
            travel: [0, 70, 0],
          },
          clear: 20,
          plusMinus: 0,
        },
        {
          name: 'bulkhead',
          shape: { kind: 'box', min: [-100, -600, 150], max: [-60, 600, 700] },
          clear: 15,
          plusMinus: 0,
        },
        {
          name: 'bonnet',
          shape: { kind: 'plane', at: [300, 0, 690], normal: [-Math.sin(deg(4)), 0, -Math.cos(deg(4))] },
          clear: 15,
          plusMinus: 0,
        },
      ],
    },
    manoeuvres: [
      { name: 'hard stop', forward: -1.1, left: 0, grade: 0, seconds: 4, via: [] },
      { name: 'long left', forward: 0, left: 1.2, grade: 0, seconds: 6, via: [] },
      { name: 'trail into right', forward: -0.7, left: -0.8, grade: 0, seconds: 3, via: [] },
    ],
    shop: {
      sheet: [2500, 1250],
      edge: 10,
      gap: null,
      brake: { longest: null, die: null, punch: null },
      printer: { bed: [220, 220, 250], wall: 4 },
    },
    prices: {
      currency: null,
      sheetPerKg: null,
      cutPerMetre: null,
      perPierce: null,
      perFold: null,
      weldPerMetre: null,
      boughtIn: null,
      perHour: null,
      minutesPerPart: null,
      minutesPerFold: null,
      minutesPerWeldMetre: null,
      otherHours: null,
      bought: null,
    },
    limits: {},
  };
  change(design);
  return design as Design;
};

/** Takes readonly off, so that a test can change one thing. */
export type Mutable<T> = T extends readonly [unknown, ...unknown[]]
  ? { -readonly [K in keyof T]: Mutable<T[K]> }
  : T extends readonly (infer U)[]
    ? Mutable<U>[]
    : T extends object
      ? { -readonly [K in keyof T]: Mutable<T[K]> }
      : T;

/** A plain L-shaped pan: sump x 0–300, 200 deep; shallow to x 700, 50 deep; 200 wide; nothing inside, no tilt. */
export const stepDesign = (change: (d: Mutable<Design>) => void = () => {}): Design =>
  sampleDesign((d) => {
    d.engine.rail.outline = [
      [-25, -125],
      [725, -125],
      [725, 125],
      [-25, 125],
    ];
    d.engine.crankcaseTop = 150;
    d.engine.crankcaseDisplaced = 0;
    d.engine.tilt = { noseUp: 0, leanLeft: 0 };
    d.chassis.body = { rollPerG: 0, divePerG: 0 };
    d.pan.floor = [
      [700, 50],
      [300, 50],
      [300, 200],
      [0, 200],
    ];
    d.pan.left = [
      [0, 100],
      [700, 100],
    ];
    d.pan.right = [
      [0, 100],
      [700, 100],
    ];
    d.pan.wings = [];
    d.pan.joints.welded = [0, 1, 2, 3];
    d.pickup.route = [];
    d.pickup.at = [150, 0];
    d.baffles = [];
    d.drain = null;
    change(d);
  });
