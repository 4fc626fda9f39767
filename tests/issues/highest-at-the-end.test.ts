import { roomLines } from 'pan-cli/terminal/room-lines.js';
import type { RoomReport } from 'pan-core';
import { expect, test } from 'vitest';
import { plainScreen } from '../plain-screen.js';

const place = (up_mm: number) => ({ forward_mm: 0, up_mm, binds: 'ground' });

const said = (highest: number): string => {
  const room: RoomReport = {
    range_mm: { forward: [-100, 100], up: [-100, 100] },
    clear: true,
    here: { binds: 'ground', spare_mm: 4 },
    nearest: null,
    lowest: place(-40),
    highest: place(highest),
    roomiest: null,
    sides: [],
    gives: [],
    map: { forward_mm: [0], up_mm: [0], names: ['ground'], spare_mm: [[4]], binds: [[0]] },
    tilts: [],
    proved: true,
    guarantee: '',
  };
  return roomLines(room, plainScreen(200)).join(' ').replace(/\s+/g, ' ');
};

test('where the search ends and not a thing of the car, nothing is said to bind', () => {
  expect(said(100)).toContain('The lowest engine is 40 mm down, where ground binds.');
  expect(said(100)).toContain('The highest is 100 mm up, as far as was looked.');
  expect(said(62)).toContain('The highest is 62 mm up, where ground binds.');
});
