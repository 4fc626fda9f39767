import { insideSolid, PAPERS, partDxf, writeStl } from 'pan-core/drawing/index.js';
import type { Vec2 } from 'pan-core/numeric/index.js';
import type { Skin } from 'pan-core/weld/index.js';
import { describe, test } from 'vitest';
import { plate } from '../interop/dxf-parts.js';
import { expectPublished, expectSays, row, title } from './rows.js';

const words = { title: 'x', warning: null, sentences: [] };
/** Values of a group of a drawing, in order. */
const groups = (text: string, code: number): readonly string[] => {
  const lines = text.split('\r\n');
  return lines.filter((_, i) => i % 2 === 1 && Number(lines[i - 1]) === code);
};

describe('drawings', () => {
  test.each(['files.bulge.90', 'files.bulge.60', 'files.bulge.45'].map((id) => [title(id), id]))(
    '%s',
    (_, id) => {
      const turn = (Number(row(id).inputs.angle_deg) * Math.PI) / 180;
      const on = (a: number): Vec2 => [100 * Math.cos(a), 100 * Math.sin(a)];
      const [from, to] = [on(0), on(turn)];
      const outline = [
        { kind: 'arc', from, to, centre: [0, 0], radius: 100, sweep: turn },
        { kind: 'line', from: to, to: [0, 0] },
        { kind: 'line', from: [0, 0], to: from },
      ] as const;
      const bulges = groups(partDxf(plate({ outline }), words).split('LWPOLYLINE\r\n')[1] ?? '', 42);
      expectPublished(id, Number(bulges[0]));
    },
  );

  const text = partDxf(plate(), words);
  const variable = (name: string): string => text.split(`${name}\r\n`)[1]?.split('\r\n')[1] ?? '';
  test(title('files.insunits.mm'), () => expectPublished('files.insunits.mm', Number(variable('$INSUNITS'))));
  test(title('files.dxf.2000'), () => expectSays('files.dxf.2000', variable('$ACADVER')));
});

describe('paper', () => {
  test.each([
    ['files.paper.A4.width', PAPERS.a4[0]],
    ['files.paper.A4.height', PAPERS.a4[1]],
    ['files.paper.Letter.width', PAPERS.letter[0]],
    ['files.paper.Letter.height', PAPERS.letter[1]],
  ])('%s', (id, length) => {
    expectPublished(id, length);
  });
});

describe('solids', () => {
  test(title('files.stl.size'), () => {
    const corners = [0, 1, 2, 3, 4, 5, 6, 7].map((i) => [i & 1, (i >> 1) & 1, (i >> 2) & 1] as const);
    const triangles = [
      [0, 2, 3],
      [0, 3, 1],
      [4, 5, 7],
      [4, 7, 6],
      [0, 1, 5],
      [0, 5, 4],
      [2, 6, 7],
      [2, 7, 3],
      [0, 4, 6],
      [0, 6, 2],
      [1, 3, 7],
      [1, 7, 5],
    ];
    const skin: Skin = {
      points: corners,
      pieces: triangles.map((loop) => ({ owner: 'belly', index: 0, normal: [0, 0, 1], loop })),
    };
    const bytes = writeStl(insideSolid(skin), 'cube');
    expectPublished('files.stl.size', bytes.length);
  });
});
