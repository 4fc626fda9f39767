import type { Design } from '../design/index.js';
import { pathLength } from '../geometry/index.js';
import { endSealSizes, type PanModel } from '../pan/index.js';
import { endSealName, flangeJoints, flangePieces, halfNames } from '../sheet/index.js';
import { beyondEndPlates, endPlateArc, endPlateFeet, jointLines } from './end-plate-line.js';
import { filletLeg } from './fillet.js';
import { linesOfEdges, type SeamLine } from './seam-line.js';
import type { Skin } from './skin.js';
import { skinMovedOut } from './skin-offset.js';
import type { Meeting } from './skin-seams.js';
import type { BareSeam } from './weld-prep.js';

/** What is welded of the flange before the pan goes through it: the joint of its halves, and its end plates. */
export const plateSeams = ({ design, profile }: PanModel): readonly BareSeam[] => {
  const { flange, sheet } = design.pan;
  const base = { run: 'continuous', step: 'plate', closedBy: null } as const;
  const names = flangePieces(design, profile).map((piece) => piece.name);
  const joint = flangeJoints(design, profile);
  const halves = flange.split === null ? null : halfNames(flange.split);
  const both = (['inside', 'outside'] as const).flatMap((side): readonly BareSeam[] =>
    halves === null
      ? []
      : [
          {
            ...base,
            name: `${halves[0]} to ${halves[1]}, ${side === 'inside' ? 'rail face' : 'underside'}`,
            between: halves,
            joint: 'butt',
            side,
            length: pathLength(joint),
            lines: jointLines(joint, side === 'inside' ? 0 : -flange.thickness),
            // Bevelled and welded from both faces, each run half of the plate.
            size: flange.thickness / 2,
          },
        ],
  );
  return [
    ...(joint.length === 0 || names.length < 2 ? [] : both),
    ...flange.endSeals.map(
      (seal): BareSeam => ({
        ...base,
        name: `${endSealName(seal)} to flange`,
        between: [endSealName(seal), 'flange'],
        joint: 'fillet',
        side: 'outside',
        // Underside and both faces of the plate, at each of its ends.
        length: 6 * flange.thickness,
        lines: endPlateFeet(design, seal),
        size: sheet.thickness,
      }),
    ),
  ];
};

/**
 * The sheet passes through the flange and ends flush: a fillet below, an edge run above that is faced off. An end
 * plate takes the flange's place on its width; its own edge and arc are welded to the end wall.
 *
 * @param rim where the skin meets the flange, round the pan at the rail
 */
export const flangeSeams = (rim: readonly Meeting[], skin: Skin, design: Design): readonly BareSeam[] => {
  const { sheet, flange } = design.pan;
  const length = rim.reduce((sum, meeting) => sum + meeting.length, 0);
  const taken = flange.endSeals.reduce((sum, seal) => sum + 2 * endSealSizes(seal).half, 0);
  const base = { between: ['flange', 'pan'] as const, length: length - taken, step: 'flange' as const };
  const edges = rim.flatMap((meeting) => meeting.edges);
  const linesAt = (down: number): readonly SeamLine[] =>
    beyondEndPlates(linesOfEdges(edges, skin.points, skinMovedOut(skin, sheet.thickness, down)), design);
  return [
    {
      ...base,
      name: 'flange to pan, below',
      joint: 'fillet',
      side: 'outside',
      run: 'continuous',
      lines: linesAt(flange.thickness),
      size: filletLeg(sheet.thickness, flange.thickness),
      closedBy: null,
    },
    {
      ...base,
      name: 'flange to pan, at the rail face',
      joint: 'butt',
      side: 'inside',
      run: 'stitch',
      lines: linesAt(0),
      size: sheet.thickness / 2,
      closedBy: 'the block, once the face is flat',
    },
    ...flange.endSeals.flatMap((seal): readonly BareSeam[] => {
      const { rim: edge, arc } = endSealSizes(seal);
      const plate = { ...base, between: [endSealName(seal), 'pan'] as const, run: 'continuous' as const };
      const leg = filletLeg(sheet.thickness, flange.thickness);
      return [
        {
          ...plate,
          name: `${endSealName(seal)} to pan, outside`,
          joint: 'fillet',
          side: 'outside',
          length: edge,
          lines: [endPlateArc(design, seal, seal.radius + seal.land, 'outside')],
          size: leg,
          closedBy: null,
        },
        {
          ...plate,
          name: `${endSealName(seal)} to pan, along the arc`,
          joint: 'open corner',
          side: 'inside',
          length: arc,
          lines: [endPlateArc(design, seal, seal.radius, 'inside')],
          size: leg,
          closedBy: 'the block’s seal, once the arc is dressed',
        },
      ];
    }),
  ];
};
