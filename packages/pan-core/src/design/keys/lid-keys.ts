import { assumedText } from '../default.js';
import { checked, choice, count, list, optional, type Report, section, tuple } from '../field/index.js';
import type { Kit } from './kit.js';
import { boltSize } from './thread.js';

const slotSize = (k: Kit, about: string) =>
  checked(
    tuple(about, [k.size('length', '1000 mm'), k.size('width', '200 mm')]),
    ([length, width], report) => {
      if (length > width) return;
      report({
        code: 'input-range',
        says: `is ${length} mm long and ${width} mm wide; the length comes first and is the greater`,
        value: length,
        limit: width,
        unit: 'mm',
      });
    },
  );

const slotRowField = (k: Kit) =>
  section('a row of slots that let oil off', {
    along: choice('edge it runs beside', ['rear', 'front', 'left', 'right']),
    count: count('how many', 1, 60),
    size: slotSize(k, 'length along the edge and width of each'),
    inset: optional(
      k.length('from the edge to the slots', { from: '2 mm', to: '500 mm' }),
      assumedText('slot inset'),
    ),
  });

const louvresField = (k: Kit) =>
  section('tray: tongues cut on three sides and bent down by hand', {
    rows: count('rows beside each other across the pan', 1, 20),
    count: count('louvres in each row, along the crank', 1, 40),
    size: slotSize(k, 'length along the crank and width of each'),
    bend: optional(
      k.angle('how far the tongue is bent down', { from: '10 deg', to: '60 deg' }),
      assumedText('louvre bend'),
    ),
    opens: optional(choice('side at which it is open', ['left', 'right']), assumedText('louvre opens')),
  });

const tabsField = () =>
  section('folded tabs on the sides that it is bolted to', {
    each_side: count('how many on each side', 1, 20),
    size: optional(boltSize('thread of their bolts'), assumedText('tab bolt')),
  });

const studsField = (k: Kit) =>
  section('tray: studs of the engine that it hangs from', {
    size: boltSize('thread of the studs'),
    at: list('[x, y] of each', k.point2('stud'), { fewest: 1, most: 60 }),
  });

/** What a lid or a windage tray may have and a wall may not. */
export const lidFields = (k: Kit) => ({
  slots: optional(list('lid or tray: rows of slots that let oil off', slotRowField(k), { most: 12 })),
  louvres: optional(louvresField(k)),
  tabs: optional(tabsField()),
  studs: optional(studsField(k)),
});

interface LidMounts {
  readonly fixed?: string | undefined;
  readonly tabs?: unknown;
  readonly studs?: unknown;
}

/** Tabs and studs are for bolts. */
export const checkMounts = ({ fixed, tabs, studs }: LidMounts, report: Report): void => {
  if (fixed !== 'welded') return;
  for (const [key, value] of Object.entries({ tabs, studs })) {
    if (value === undefined) continue;
    report(
      {
        code: 'input-key',
        says: 'is for what is bolted, and this is welded',
        advice: 'Say fixed: bolted, or leave it out.',
      },
      [key],
    );
  }
};
