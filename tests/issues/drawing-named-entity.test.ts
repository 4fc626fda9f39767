import { drawingOf } from 'pan-cli/read/drawing/read-drawing.js';
import { expect, test } from 'vitest';

const sound = (entity: string): string =>
  ['0', 'SECTION', '2', 'ENTITIES', ...entity.split(' '), '0', 'ENDSEC', '0', 'EOF', ''].join('\n');
const LINE = '0 LINE 8 0 10 0 20 0 11 10 21 0';

// It was looked up in a table where every object's own names are found.
test.each(['constructor', '__proto__', 'toString', 'hasOwnProperty'])(
  'an entity named %s is passed over like any other that is unknown',
  async (name) => {
    const drawing = await drawingOf('rail.dxf', sound(`0 ${name} 8 0 ${LINE}`));
    expect(drawing.curves).toHaveLength(1);
  },
);
