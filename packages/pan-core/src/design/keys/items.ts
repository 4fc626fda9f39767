import type { Report } from '../field/index.js';
import { checked, type Field, list, optional, section, text, tuple } from '../field/index.js';
import type { Kit } from './kit.js';

export const NAME_LENGTH = 60;

export const nameField = (sample: string): Field<string> =>
  text('name in the report and on parts', NAME_LENGTH, sample);

/** Two opposite corners of a box. */
export const corners = (k: Kit) =>
  checked(
    tuple('two opposite corners, [[x, y, z], [x, y, z]]', [k.point3('corner'), k.point3('corner')]),
    (box, report) => {
      const [a, b] = box;
      for (const [axis, name] of ['x', 'y', 'z'].entries()) {
        if (a[axis] === b[axis]) {
          report({
            code: 'input-range',
            says: `has no size along ${name}: both corners are at the same ${name}`,
            expected: 'two opposite corners',
          });
        }
      }
    },
  );

export const rodEnds = (k: Kit) =>
  checked(
    tuple('both ends of a round bar, [[x, y, z], [x, y, z]]', [k.point3('end'), k.point3('end')]),
    ([a, b], report) => {
      if (a.every((value, axis) => value === b[axis])) {
        report({
          code: 'input-range',
          says: 'has no length: both ends are the same point',
          expected: 'two ends apart',
        });
      }
    },
  );

/** A thing of a fixed shape: `box`, or `rod` with its `diameter`. */
export const itemField = (k: Kit, about: string, sample: string) =>
  checked(
    section(about, {
      name: nameField(sample),
      box: optional(corners(k)),
      rod: optional(rodEnds(k)),
      diameter: optional(k.size('diameter of the rod', '1000 mm')),
    }),
    (item, report) => {
      oneOf({ box: item.box, rod: item.rod }, report);
      diameterGoesWithRod(item, report);
    },
  );

/** A round thing about the crank's axis. */
export const roundField = (k: Kit, about: string) =>
  checked(
    section(about, {
      diameter: k.size('diameter over all', '1000 mm'),
      rear: k.length('x of its rear end'),
      front: k.length('x of its front end'),
    }),
    ({ rear, front }, report) => {
      if (rear < front) return;
      report({ code: 'input-range', says: `is ${front} mm; it must lie ahead of rear, ${rear} mm` }, [
        'front',
      ]);
    },
  );

export const diameterGoesWithRod = (item: { rod?: unknown; diameter?: unknown }, report: Report): void => {
  if (item.rod !== undefined && item.diameter === undefined) {
    report(
      {
        code: 'input-missing',
        says: 'is missing',
        expected: 'the diameter of the rod, such as 24 mm',
        found: 'nothing',
      },
      ['diameter'],
    );
  }
  if (item.rod === undefined && item.diameter !== undefined) {
    report(
      {
        code: 'input-key',
        says: 'belongs to a rod, and there is none here',
        expected: 'rod beside diameter',
      },
      ['diameter'],
    );
  }
};

/** Reports unless exactly one of the keys is given. */
export const oneOf = (keys: Readonly<Record<string, unknown>>, report: Report): void => {
  const given = Object.keys(keys).filter((key) => keys[key] !== undefined);
  if (given.length === 1) return;
  const names = Object.keys(keys).join(', ');
  const says =
    given.length === 0 ? `needs one of: ${names}` : `has ${given.join(' and ')}; only one of them can hold`;
  report({
    code: given.length === 0 ? 'input-missing' : 'input-key',
    says,
    expected: `exactly one of: ${names}`,
    found: given.length === 0 ? 'none of them' : given.join(' and '),
  });
};

/** A list whose entries have names of their own. */
export const named = <T extends { readonly name?: string | undefined }>(
  about: string,
  of: Field<T>,
  most = 100,
): Field<readonly T[]> =>
  checked(list(about, of, { most }), (entries, report) => {
    const first = new Map<string, number>();
    entries.forEach(({ name }, i) => {
      if (name === undefined) return;
      const earlier = first.get(name);
      if (earlier === undefined) first.set(name, i);
      else {
        report(
          {
            code: 'input-range',
            says: `is ${name}, and so is the name of entry ${earlier}`,
            expected: 'a name used once',
            found: name,
            advice: 'Give each its own name.',
          },
          [i, 'name'],
        );
      }
    });
  });
