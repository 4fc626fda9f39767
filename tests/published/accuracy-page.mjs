// The accuracy page as Markdown, from the published rows, what tests found, runs on record and the models' own limits.

const cell = (text) => String(text).replaceAll('|', '\\|').replaceAll('\n', ' ');
const line = (cells) => `| ${cells.map(cell).join(' | ')} |`;
const table = (heads, rows) => [line(heads), line(heads.map(() => '---')), ...rows.map(line), ''].join('\n');

/** A number with no more digits than `grain` bears out, plain where it reads well. */
const digits = (value, grain) => {
  if (typeof value !== 'number') return value;
  const places = grain > 0 ? Math.max(0, Math.min(12, 1 - Math.floor(Math.log10(grain)))) : 12;
  const size = Math.abs(value);
  if (size !== 0 && (size >= 1e7 || size < 1e-5)) return value.toPrecision(6).replace(/\.?0+(?=e|$)/, '');
  return String(Number(value.toFixed(places)));
};

/** A difference in two digits, rounded up so that it never claims too much. */
const difference = (off) => {
  if (off === 0) return '0';
  const grain = 10 ** (Math.floor(Math.log10(off)) - 1);
  return (Math.ceil(off / grain - 1e-9) * grain).toPrecision(2).replace(/\.0(?=e|$)/, '');
};

/** What is allowed: the row's tolerance, with what chords in place of arcs add, or the last bits of the number. */
const bound = (allowed) => Number(allowed.toPrecision(3));

const worstById = (told) => {
  const found = new Map();
  for (const one of told) {
    if (one.kind !== 'row') continue;
    const before = found.get(one.id);
    if (before === undefined || one.off > before.off) found.set(one.id, one);
  }
  return found;
};

const titles = {
  files: 'File formats',
  holes: 'Holes, threads and gaskets',
  leak: 'Leak test',
  liquid: 'Liquid under load',
  oil: 'Oil',
  orifice: 'Openings and weirs',
  pickup: 'Pickup',
  practice: 'Trade defaults and limits',
  sheet: 'Bending and sheet',
  slosh: 'Sloshing',
  volume: 'Volumes',
  weld: 'Welding',
};

const howHad = { seen: 'seen', memory: 'from memory', computed: 'computed' };

const rowCells = (row, found) => {
  const ours = found.get(row.id);
  return [
    `\`${row.id}\``,
    `${row.what}${row.note === undefined ? '' : `. ${row.note}`}`,
    `${row.value}${row.unit === '1' || row.unit === 'text' ? '' : ` ${row.unit}`}`,
    ours === undefined ? '—' : digits(ours.ours, row.tolerance),
    ours === undefined || row.unit === 'text' ? '—' : difference(ours.off),
    row.unit === 'text' ? '—' : bound(ours?.allowed ?? row.tolerance),
    `${row.source} (${howHad[row.seen]})`,
  ];
};

const counts = (rows, found) => {
  const with_ = rows.filter((row) => found.has(row.id)).length;
  return `${rows.length} rows, ${with_} of them tested`;
};

/** The whole page. */
export const accuracyPage = ({ subjects, told, runs, models }) => {
  const found = worstById(told);
  const all = subjects.flatMap(({ rows }) => rows);
  const worst = new Map();
  for (const one of told) {
    if (one.kind !== 'worst') continue;
    const before = worst.get(one.what);
    if (before === undefined || one.value > before.value) worst.set(one.what, one);
  }
  const heads = ['row', 'what', 'published', 'ours', 'difference', 'allowed', 'source'];
  const parts = [
    '# How exact it is',
    '',
    `Made by \`npx -y pnpm@10 accuracy\` from what the tests find; nothing here is typed by hand. ${counts(all, found)}.`,
    'The difference is the largest of all tests that use the row, and every test run checks that it is still no more',
    'than stands here. `computed` is a cross-check of two computations, no source of its own; `—` in the column',
    '“ours” marks a row that is kept and that no part of the program uses yet. How rows are had: [README.md](README.md).',
    '',
    '## Against other arithmetic and other programs',
    '',
    table(
      ['what', 'worst found', 'allowed', 'against'],
      [...worst.values()]
        .sort((a, b) => (a.what < b.what ? -1 : 1))
        .map((one) => {
          const unit = one.unit === '1' ? '' : ` ${one.unit}`;
          return [one.what, `${difference(one.value)}${unit}`, `${one.allowed}${unit}`, one.against];
        }),
    ),
    '## Long runs on record',
    '',
    table(
      ['what', 'how many', 'from seed', 'found', 'Node'],
      runs.map((run) => [run.what, run.count.toLocaleString('en-GB'), run.seed, run.found, run.node]),
    ),
    '## Models, and where they end',
    '',
    'Static answers are margins: no tilt of still oil stands for its slosh, and a pickup rule for water only hints at oil.',
    '',
    table(
      ['numbers', 'model', 'source', 'holds for'],
      models
        .filter((model) => model.holds !== undefined)
        .map((model) => [`${model.numbers}…`, model.formula, model.source, model.holds]),
    ),
    ...subjects.flatMap(({ name, rows }) => [
      `## ${titles[name] ?? name}`,
      '',
      `${counts(rows, found)}.`,
      '',
      table(
        heads,
        rows.map((row) => rowCells(row, found)),
      ),
    ]),
  ];
  return `${parts.join('\n').trimEnd()}\n`;
};
