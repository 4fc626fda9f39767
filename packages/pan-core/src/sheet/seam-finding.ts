import type { Design } from '../design/index.js';
import { atLeast, type SheetFinding } from './finding.js';
import type { Part } from './part.js';
import { seamSpare } from './seam-place.js';

/** How far the seams of parts that are made of pieces stay off bends, holes and what is welded inside. */
export const seamFindings = (design: Design, parts: readonly Part[]): readonly SheetFinding[] => {
  const seams = parts.flatMap((part) =>
    (part.seams ?? []).map((seam) => ({
      part,
      ...seam,
      ...seamSpare(part, seam.end === 'left' ? 0 : part.flat[0]),
    })),
  );
  const [first] = seams;
  if (first === undefined) return [];
  const worst = seams.reduce((a, b) => (b.spare < a.spare ? b : a), first);
  const names = [...new Set(seams.map(({ part, other }) => [part.name, other].sort().join(' to ')))];
  const nearest = Number.isFinite(worst.spare)
    ? `; nearest ${worst.what}, past the room it is kept (8 thicknesses from bends and holes, 5 from inside welds; common practice, no source)`
    : '';
  return [
    atLeast(design, {
      id: 'seam_place',
      title: 'seams across parts clear of bends and holes',
      value: Number.isFinite(worst.spare) ? worst.spare : worst.part.flat[0],
      limit: 0,
      unit: 'mm',
      below: 'warn',
      because: `${names.join(', ')}, as the sheet is too short for the whole or pan.joints.split says${nearest}`,
      try: (short) =>
        `Move that seam ${short.toFixed(0)} mm along the part (pan.joints.split), or take a longer sheet (shop.sheet).`,
    }),
  ];
};
