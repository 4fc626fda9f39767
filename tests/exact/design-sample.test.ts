import { describe, expect, it } from 'vitest';
import { exampleText, read } from '../design-text.js';
import { expectWithin } from '../numbers.js';

const demo = exampleText('demo');
const deg = Math.PI / 180;

describe('the demo design, key by key', async () => {
  const { design, assumed, unknown } = await read(demo);

  it('head and engine', () => {
    expect(design.format).toBe(1);
    expect(design.title).toBe('Quarry-road estate, long straight six');
    const { engine } = design;
    expect(engine.rail.outline).toEqual([
      [0, -125],
      [690, -125],
      [690, 125],
      [0, 125],
    ]);
    expect(engine.rail.land).toBe(25);
    expect(engine.rail.seenFrom).toBe('below');
    expect(engine.railHoles).toHaveLength(30);
    expect(engine.railHoles.every(({ thread }) => thread === 8)).toBe(true);
    const at = engine.railHoles.map(({ at: [x, y] }) => `${x},${y}`);
    // 12 holes from 15 to 675 are 60 apart; the ends are 11 from 0 and from 690.
    for (const hole of ['15,114', '75,114', '675,114', '15,-114', '675,-114', '11,57', '11,0', '679,-57']) {
      expect(at).toContain(hole);
    }
    expect(engine.crankcaseTop).toBe(140);
    expect(engine.crank).toEqual({
      centreAboveRail: 62,
      stroke: 96,
      bigEndReach: 41,
      throws: [70, 172, 274, 376, 478, 580],
      throwWidth: 60,
    });
    expectWithin(engine.tilt?.noseUp, 3 * deg, 1e-16);
    expect(engine.tilt?.leanLeft).toBe(0);
    expect(engine.topAboveRail).toBe(600);
    expect(engine.pumpInlet).toEqual([630, 70, 5]);
    expect(engine.inside).toEqual([]);
    expect(engine.carries).toEqual([
      { name: 'intake', shape: { kind: 'box', min: [80, 120, 200], max: [620, 330, 600] } },
    ]);
  });

  it('oil', () => {
    expect(design.oil).toEqual({
      fill: 7.2e6,
      filter: 0.7e6,
      heldUp: 1.2e6,
      galleries: 0.5e6,
      grade: '5W-30',
      sheet: { at40: null, at100: null, index: null, density: null },
      pump: 750_000,
      cranking: 30_000,
    });
  });

  it('pan', () => {
    const { pan } = design;
    expect(pan.sheet).toEqual({ material: 'aluminium 5052-H32', thickness: 3, bendRadius: 5 });
    expect(pan.floor).toEqual([
      [655, 40],
      [320, 58],
      [320, 165],
      [32, 172],
    ]);
    expect(pan.left).toEqual([
      [32, 95],
      [655, 95],
    ]);
    expect(pan.right).toEqual(pan.left);
    expect(pan.wings).toEqual([
      {
        name: 'right wing',
        side: 'right',
        rear: 45,
        front: 300,
        topDown: { rear: 95, front: 95 },
        topFall: 0,
        beyondWall: { rear: 60, front: 60 },
      },
    ]);
    expect(pan.notches).toEqual([]);
    expect(pan.flange).toMatchObject({ thickness: 10, beyond: 0, fit: 'medium', gasket: 'sealant' });
    expect(pan.structural).toBe(false);
    expect(pan.joints).toEqual({
      welded: [],
      bendTest: null,
      allowance: 'k',
      fold: [],
      weld: [],
      split: { usual: true, whole: [], seams: [] },
    });
    expect(pan.sumpFrom).toBeNull();
  });

  it('pickup, baffles and fittings', () => {
    expect(design.pickup).toEqual({
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
    });
    expect(design.baffles).toEqual([
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
    ]);
    expect(design.drain).toEqual({
      at: [62, 0],
      thread: { diameter: 18, pitch: 1.5 },
      bung: 28,
      plugBelow: 12,
    });
    expect(design.bungs).toEqual([]);
    expect(design.dipstick).toEqual({ enters: [320, -90, 20], toward: [255, -75, -150] });
  });

  it('chassis', () => {
    const { chassis } = design;
    expect(chassis.axes).toBe('car');
    expect(chassis.ground).toBe(-283);
    expectWithin(chassis.moves.rock, 2 * deg, 1e-16);
    expect([chassis.moves.up, chassis.moves.down, chassis.moves.foreAft]).toEqual([4, 4, 3]);
    expectWithin(chassis.body.rollPerG, 3 * deg, 1e-16);
    expectWithin(chassis.body.divePerG, 1.5 * deg, 1e-16);
    expect(chassis.obstacles.map(({ name, clear, plusMinus }) => [name, clear, plusMinus])).toEqual([
      ['crossmember', 15, 2],
      ['drag link', 20, 2],
      ['bulkhead', 15, 2],
      ['bonnet', 15, 2],
    ]);
    expect(chassis.obstacles[1]?.shape).toEqual({
      kind: 'rod',
      from: [500, -300, -95],
      to: [500, 300, -95],
      diameter: 24,
      travel: [0, 70, 0],
    });
    const bonnet = chassis.obstacles[3]?.shape;
    if (bonnet?.kind !== 'plane') throw new Error('the bonnet is a plane');
    // 100 mm further forward the surface is 100·tan 4° lower; its free face looks down.
    const [x, y, z] = bonnet.normal;
    expectWithin(x * 100 - z * 100 * Math.tan(4 * deg), 0, 1e-13);
    expect(y).toBe(0);
    expect(z).toBeLessThan(0);
    expectWithin(Math.hypot(x, y, z), 1, 2e-16);
  });

  it('manoeuvres', () => {
    expect(design.manoeuvres).toEqual([
      { name: 'hard stop', forward: -1.1, left: 0, grade: 0, seconds: 4, via: [] },
      { name: 'long left', forward: 0, left: 1.2, grade: 0, seconds: 6, via: [] },
      { name: 'trail into right', forward: -0.7, left: -0.8, grade: 0, seconds: 3, via: [] },
    ]);
    expect(design.limits).toEqual({});
    expect(design.prices.bought).toBeNull();
  });

  it('lists what it took for granted, and nothing that it was told', () => {
    expect(assumed.map(({ path, value }) => `${path.join('.')} = ${value}`).sort()).toEqual(
      [
        'engine.rail.land = 25 mm',
        'engine.crankcase_displaced = 35 %',
        'engine.crank.throw_width = 60 mm',
        'oil.pump_cranking = 4 %',
        'pan.flange.beyond = 0 mm',
        'pan.flange.fit = medium',
        'pan.flange.gasket = sealant',
        'pan.joints.allowance = k',
        'pickup.wall = 1.5 mm',
        'shop.edge = 10 mm',
        'shop.sheet = 2500 mm x 1250 mm',
        'shop.printer.bed = 220 mm x 220 mm x 250 mm',
        'shop.printer.wall = 4 mm',
        'baffles.0.thickness = 3 mm',
        'baffles.1.thickness = 3 mm',
        'baffles.1.fixed = welded',
        'baffles.1.doors.0.up = 10 mm',
        'baffles.1.doors.1.up = 10 mm',
        'engine.plus_minus = 0.5 mm',
        'chassis.ground_plus_minus = 2 mm',
        'chassis.obstacles.1.plus_minus = 2 mm',
        'chassis.obstacles.2.plus_minus = 2 mm',
        'chassis.obstacles.3.plus_minus = 2 mm',
      ].sort(),
    );
    expect(unknown).toEqual([]);
  });

  it('is frozen through and through', () => {
    expect(Object.isFrozen(design.pan.wings[0]?.topDown)).toBe(true);
    expect(Object.isFrozen(design.engine.railHoles[0]?.at)).toBe(true);
    expect(Object.isFrozen(assumed[0]?.path)).toBe(true);
  });
});

describe('the other examples', () => {
  it('two wings: everything measured, nothing unknown', async () => {
    const { design, unknown } = await read(exampleText('two-wings'));
    expect(design.pan.wings.map(({ side }) => side)).toEqual(['right', 'left']);
    expect(unknown).toEqual([]);
  });

  it('inches: turned over, in mm, nothing unknown', async () => {
    const { design, unknown } = await read(exampleText('inches'));
    expect(unknown).toEqual([]);
    expect(design.engine.rail.land).toBe(25.4);
    // [22 1/2, 4] on the page seen from below is 4 in to the right of the car.
    expect(design.engine.rail.outline).toContainEqual([571.5, -101.6]);
    expectWithin(design.oil.fill, 7 * 946_352.946, 1e-9);
    expectWithin(design.oil.pump, (10 * 3_785_411.784) / 60, 1e-9);
  });
});
