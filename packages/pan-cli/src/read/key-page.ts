import { designKeyRows } from 'pan-core';

const HEAD = `# Keys of a design file

A design file is YAML. This page is written from the same table that reads the file
(\`node packages/pan-cli/write-key-pages.mjs\`), so it cannot fall behind it.

**Units.** A bare number is a length in the file's \`units\`, an angle in degrees, an acceleration in g, a time in
seconds; in a file in mm a bare volume is in litres and a flow in litres a minute, in a file in inches both need
their unit. Any value may carry its own: \`5 1/2 in\`, \`5.5"\`, \`140 mm\`, \`6 US qt\`, \`6 imp qt\`, \`45 L/min\`, \`3 deg\`,
\`10 %\`, \`1.1 g\`. \`qt\` alone is refused, because two quarts exist; so is \`5-1/2 in\`. An acceleration may also be written
as the angle it tips the oil to: \`45 deg\` is 1 g. Units beyond these (\`yd\`, \`arcmin\`, \`cuft\`) are looked up.

**Axes.** x runs forward from the rear face of the block, y to the left, z up from the pan face of the block (the
rail). *Down* is a depth below it, positive.

**The rail as traced.** Points of the rail and its holes are written as they lie on the page, with the front of the
engine up the page (x) and y positive to the left of the page. With \`seen_from: below\` the left of the page is the
right of the car, so y is turned over on reading; with \`above\` it stays.

**Obstacles.** A plane has \`at\` and either \`facing\` (the side its free face looks to; \`falls_forward\` tilts a face that
looks down or up) or \`normal\`. A rod's \`travel\` is how far it moves either way.

**Unknown.** Where the table says so, the word \`unknown\` may stand: the checks that need it then say so. Nothing is
put in its place.

| key | meaning | takes | when left out |
|---|---|---|---|
`;

const cell = (text: string): string => text.replaceAll('|', '\\|').replaceAll('<', '&lt;');

/** The table of keys as a Markdown page. */
export const keyPage = (): string => {
  const rows = designKeyRows().map(({ key, about, takes, required, assumed, mayBeUnknown }) => {
    const absent = required ? '**must be given**' : mayBeUnknown ? 'unknown' : (assumed ?? 'none');
    return `| \`${key}\` | ${cell(about)} | ${cell(takes)}${mayBeUnknown ? ', or `unknown`' : ''} | ${cell(absent)} |`;
  });
  return `${HEAD}${rows.join('\n')}\n`;
};
