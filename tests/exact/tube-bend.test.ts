import { PanError } from 'pan-core/errors/index.js';
import { tubeBends } from 'pan-core/pan/index.js';
import { describe, expect, test } from 'vitest';
import { expectWithin } from '../numbers.js';

const QUARTER = Math.PI / 2;

describe('a tube through points', () => {
  test('up, forward, left: two quarter bends, planes a quarter turn apart', () => {
    const R = 40;
    const list = tubeBends(
      [
        [0, 0, 0],
        [0, 0, 100],
        [200, 0, 100],
        [200, 150, 100],
      ],
      R,
    );
    expect(list.steps).toHaveLength(2);
    expectWithin(list.steps[0]!.length, 100 - R, 1e-12, 'first straight');
    expectWithin(list.steps[0]!.angle, QUARTER, 1e-12, 'first angle');
    expectWithin(list.steps[1]!.length, 200 - 2 * R, 1e-12, 'second straight');
    // Seen along +x the first bend came from below, the second goes to the left: a quarter turn anticlockwise.
    expectWithin(Math.abs(list.steps[1]!.rotation), QUARTER, 1e-12, 'rotation');
    expectWithin(list.last, 150 - R, 1e-12, 'last');
    expectWithin(list.cut, 100 + 200 + 150 - 4 * R + 2 * QUARTER * R, 1e-12, 'cut');
    expectWithin(list.stay.along, 100 - R + QUARTER * R + 60, 1e-12, 'stay');
    expect(list.stay.at.map((v) => Math.round(v))).toEqual([100, 0, 100]);
  });

  test('turning the same way twice needs no rotation, and a straight point no bend', () => {
    const list = tubeBends(
      [
        [0, 0, 0],
        [50, 0, 0],
        [100, 0, 0],
        [100, 100, 0],
        [0, 100, 0],
      ],
      20,
    );
    expect(list.steps.map((s) => Math.round((s.angle * 180) / Math.PI))).toEqual([90, 90]);
    expectWithin(list.steps[1]!.rotation, 0, 1e-12, 'rotation');
    expectWithin(list.steps[0]!.length, 80, 1e-12, 'both straights in one');
  });

  test('laid out step by step it ends where the route ends', () => {
    const route = [
      [140, 0, -164],
      [140, 0, -120],
      [205, 50, -60],
      [300, 75, -25],
      [600, 75, -25],
    ] as const;
    const R = 25;
    const list = tubeBends(route, R);
    type V = readonly number[];
    const cross = (a: V, b: V): number[] => [
      a[1]! * b[2]! - a[2]! * b[1]!,
      a[2]! * b[0]! - a[0]! * b[2]!,
      a[0]! * b[1]! - a[1]! * b[0]!,
    ];
    const mix = (a: V, p: number, b: V, q: number): number[] => a.map((x, i) => x * p + b[i]! * q);
    // The tube's way, and the way its next bend goes; the first bend's plane is the route's own.
    let [at, way]: [number[], number[]] = [[...route[0]], [0, 0, 1]];
    const first = Math.hypot(65, 50);
    let toward: number[] = [65 / first, 50 / first, 0];
    for (const { length, rotation, angle } of list.steps) {
      toward = mix(toward, Math.cos(rotation), cross(way, toward), Math.sin(rotation));
      at = mix(at, 1, way, length);
      at = mix(mix(at, 1, way, R * Math.sin(angle)), 1, toward, R * (1 - Math.cos(angle)));
      [way, toward] = [
        mix(way, Math.cos(angle), toward, Math.sin(angle)),
        mix(way, -Math.sin(angle), toward, Math.cos(angle)),
      ];
    }
    at = mix(at, 1, way, list.last);
    route[4].forEach((v, i) => {
      expectWithin(at[i], v, 1e-9, `axis ${i}`);
    });
  });

  test('bends without room between them are refused with both lengths', () => {
    const call = (): unknown =>
      tubeBends(
        [
          [0, 0, 0],
          [0, 0, 100],
          [50, 0, 100],
          [50, 100, 100],
        ],
        40,
      );
    expect(call).toThrow(PanError);
    expect(call).toThrow(/50 mm run 2 need 80 mm/);
  });
});
