// An invented design, as the keys of a design file: lengths in mm, everything else with its unit.
export const design = {
  format: 1,
  title: 'Orchard pickup, long four',
  units: 'mm',
  engine: {
    rail: { length: 560, width: 240, seen_from: 'below' },
    crankcase_top: 130,
    crank: { centre_above_rail: 60, stroke: 88, big_end_reach: 38, throws: [80, 190, 300, 410] },
    tilt: { nose_up: '3 deg', lean_left: '0 deg' },
  },
  oil: { fill: '5.5 L', pump: '40 L/min' },
  pan: {
    floor_inside: [
      [530, 45],
      [290, 60],
      [290, 160],
      [30, 165],
    ],
    width_inside: 180,
  },
  pickup: { at: [140, 0], gap: 8, mouth: 60, bore: 22 },
  manoeuvres: [{ name: 'hard stop', braking: '1 g', for: '3 s' }],
};
