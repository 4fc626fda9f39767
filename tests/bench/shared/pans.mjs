// Pans of three sizes, their cells all oil: a step, then ever more stations along floor and walls.
const LENGTH = 690;

const along = (count, from, to, at) =>
  Array.from({ length: count }, (_, i) => {
    const x = from + ((to - from) * i) / (count - 1);
    return [Number(x.toFixed(3)), Number(at(x).toFixed(3))];
  });

const design = {
  format: 1,
  title: 'Measured pan',
  units: 'mm',
  engine: {
    rail: { length: LENGTH, width: 250, seen_from: 'below' },
    crankcase_top: 140,
    tilt: { nose_up: '3 deg', lean_left: '0 deg' },
  },
  oil: { fill: '7.2 L' },
  pan: {
    floor_inside: [
      [655, 40],
      [320, 58],
      [32, 172],
    ],
    width_inside: 190,
  },
  pickup: { at: [140, 0], gap: 8, mouth: 60, bore: 22 },
};

export const PANS = [
  { facets: 60, stations: 2, walls: 2 },
  { facets: 600, stations: 12, walls: 26 },
  { facets: 6000, stations: 100, walls: 300 },
];

/**
 * The model of a size: `stations` points of the floor ahead of the step and behind it, `walls` of each side,
 * more than a file may hold; corners as sharp as they are drawn.
 */
export const panOf = (core, { stations, walls }) => {
  const read = core.readDesign(design).design;
  const floor = [
    ...along(stations, 655, 320, (x) => 58 - 18 * ((x - 320) / 335) ** 2),
    ...along(stations, 319, 32, (x) => 172 - 7 * ((x - 32) / 287) ** 2),
  ];
  const side = (bulge) => along(walls, 32, 655, (x) => 95 - bulge * ((x - 344) / 312) ** 2);
  const joints = { ...read.pan.joints, welded: floor.map((_, i) => i) };
  return core.buildPan({
    ...read,
    engine: { ...read.engine, crankcaseDisplaced: 0 },
    pan: { ...read.pan, floor, left: side(20), right: side(25), joints },
  });
};
