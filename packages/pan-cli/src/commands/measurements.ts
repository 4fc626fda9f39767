/** One of the ten measurements a first design is made from. */
export interface Measurement {
  /** Name of the option that gives it without being asked. */
  readonly flag: string;
  readonly kind: 'length' | 'angle';
  readonly ask: string;
  /** The same in a few words, for the list of options. */
  readonly what: string;
  /** Smallest and largest that can be meant: mm, or degrees. */
  readonly from: number;
  readonly to: number;
}

export const measurements: readonly Measurement[] = [
  {
    flag: 'rail-length',
    kind: 'length',
    ask: 'Pan rail, its length from the rear face of the block',
    what: 'Length of the block’s pan rail',
    from: 150,
    to: 1500,
  },
  {
    flag: 'rail-width',
    kind: 'length',
    ask: 'Pan rail, width over its outer edges',
    what: 'Width of the rail, outside to outside',
    from: 120,
    to: 600,
  },
  {
    flag: 'crank-centre',
    kind: 'length',
    ask: 'Crank centre line above the rail',
    what: 'Height of the crank’s centre above the rail',
    from: -100,
    to: 200,
  },
  { flag: 'stroke', kind: 'length', ask: 'Stroke', what: 'Stroke of the crank', from: 30, to: 200 },
  {
    flag: 'big-end',
    kind: 'length',
    ask: 'Crankpin’s centre to the far side of the rod’s big end',
    what: 'Crankpin’s centre to the far side of the rod’s big end',
    from: 20,
    to: 120,
  },
  {
    flag: 'nose-up',
    kind: 'angle',
    ask: 'Engine in the car, nose up by (0 is level)',
    what: 'Angle by which the engine sits nose up in the car',
    from: -15,
    to: 15,
  },
  {
    flag: 'shallow',
    kind: 'length',
    ask: 'Depth inside, ahead of the sump',
    what: 'Depth inside the pan ahead of the sump',
    from: 20,
    to: 250,
  },
  {
    flag: 'sump-length',
    kind: 'length',
    ask: 'Rear face of the block to the front of the sump',
    what: 'Rear face of the block to the front of the sump',
    from: 100,
    to: 1000,
  },
  {
    flag: 'sump-depth',
    kind: 'length',
    ask: 'Depth inside the sump',
    what: 'Depth inside the sump',
    from: 60,
    to: 400,
  },
  {
    flag: 'ground',
    kind: 'length',
    ask: 'Rail down to the road, car loaded',
    what: 'Rail down to the road, car loaded',
    from: 80,
    to: 800,
  },
];
