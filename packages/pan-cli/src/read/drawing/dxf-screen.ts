import { drawingRefusal } from './drawing-problem.js';
import codes from './dxf-entity-codes.json' with { type: 'json' };
import { checkNumber, type Tag } from './dxf-tags.js';

/** What is left of a DXF file once everything that no outline needs is taken out. */
export interface ScreenedDxf {
  /** mm in one unit; null when the file does not say. */
  readonly unit: number | null;
  /** A DXF text of blocks and entities that can be parsed without surprises. */
  readonly text: string;
  /** Entities outside blocks in that text. */
  readonly entities: number;
  readonly passedOver: readonly string[];
  /** Layers of words that show, one entry a text; null for one in a block. */
  readonly words: readonly (string | null)[];
}

/** An entity: its name, and its groups. */
interface Entity {
  readonly name: string;
  readonly line: number;
  readonly tags: readonly Tag[];
}

const MOST_ENTITIES = 100_000;
// $ACADVER of releases R10 to 2018 (the DXF reference's list, from memory).
const RELEASES = /^AC10(06|09|12|14|15|18|21|24|27|32)$/;
// $INSUNITS (the DXF reference): inch, foot, mm, cm, m, dm.
const UNITS: Readonly<Record<string, number>> = { 1: 25.4, 2: 304.8, 4: 1, 5: 10, 6: 1000, 14: 100 };
// As maps: an entity may be named like something that every object has.
const KEPT: ReadonlyMap<string, readonly number[]> = new Map(Object.entries(codes.kept));
const NEEDED: ReadonlyMap<string, readonly number[]> = new Map(Object.entries(codes.needed));
/** Carries through the parser what it would leave out: it keeps texts of this code with their entity. */
const CARRIER = 1000;

/**
 * Keeps the blocks and entities that can be part of an outline, each with the groups it needs.
 *
 * @throws PanError `file-read` with the line of what is missing or out of place
 */
export const screenDxf = (tags: readonly Tag[]): ScreenedDxf => {
  const sections = sectionsOf(tags);
  const header = headerOf(sections.get('HEADER') ?? []);
  const version = header.get('$ACADVER');
  if (version !== undefined && !RELEASES.test(version.value))
    throw drawingRefusal(
      `Its version, ${version.value.slice(0, 20)}, is not one that is known.`,
      'Save it as release R12 or 2000 to 2018.',
      version.line,
    );
  const passed = new Map<string, number>();
  const [inBlocks, inModel] = ['BLOCKS', 'ENTITIES'].map((name) => entitiesOf(sections.get(name) ?? []));
  const blocks = kept(inBlocks ?? [], passed);
  const entities = kept(inModel ?? [], passed);
  if (blocks.length + entities.length > MOST_ENTITIES)
    throw drawingRefusal(`It has more than ${MOST_ENTITIES} entities.`, 'Keep only the rail in it.');
  const lines = ['0', 'SECTION', '2', 'BLOCKS', ...blocks.flatMap(linesOf), '0', 'ENDSEC'];
  lines.push('0', 'SECTION', '2', 'ENTITIES');
  for (const one of entities) lines.push(...linesOf(one));
  lines.push('0', 'ENDSEC', '0', 'EOF', '');
  return {
    unit: UNITS[header.get('$INSUNITS')?.value ?? ''] ?? null,
    text: lines.join('\n'),
    entities: entities.filter(({ name }) => name !== 'VERTEX' && name !== 'SEQEND').length,
    passedOver: [...passed].map(([name, count]) => `${count} ${name.toLowerCase().slice(0, 20)}`).slice(0, 6),
    words: [...wordLayers(inModel ?? []), ...wordLayers(inBlocks ?? []).map(() => null)],
  };
};

const WORDS: ReadonlySet<string> = new Set(codes.words);

const wordLayers = (entities: readonly Entity[]): readonly string[] =>
  entities.filter((one) => WORDS.has(one.name) && !isHidden(one)).map((one) => groupOf(one, 8) ?? '0');

/** Not shown, or on a sheet of paper and not in the model. */
const isHidden = (one: Entity): boolean => groupOf(one, 60) === '1' || groupOf(one, 67) === '1';

const sectionsOf = (tags: readonly Tag[]): ReadonlyMap<string, readonly Tag[]> => {
  const sections = new Map<string, readonly Tag[]>();
  let open: { readonly name: string; readonly from: number; readonly line: number } | null = null;
  tags.forEach(({ code, value, line }, i) => {
    if (code !== 0) return;
    if (value === 'SECTION') {
      const name = tags[i + 1];
      if (open !== null || name?.code !== 2)
        throw drawingRefusal('A section begins out of place.', 'Save it again from a drawing program.', line);
      open = { name: name.value, from: i + 2, line };
    } else if (value === 'ENDSEC' && open !== null) {
      sections.set(open.name, tags.slice(open.from, i));
      open = null;
    } else if (value === 'EOF' && open !== null) {
      throw drawingRefusal(
        `Its section ${open.name.slice(0, 20)} does not end.`,
        'Save it again.',
        open.line,
      );
    }
  });
  if (!sections.has('ENTITIES'))
    throw drawingRefusal('It has no ENTITIES section, so nothing is drawn in it.', 'Save it again.');
  return sections;
};

const headerOf = (tags: readonly Tag[]): ReadonlyMap<string, Tag> => {
  const values = new Map<string, Tag>();
  tags.forEach(({ code, value }, i) => {
    const next = tags[i + 1];
    if (code === 9 && next !== undefined) values.set(value, next);
  });
  return values;
};

const entitiesOf = (tags: readonly Tag[]): readonly Entity[] => {
  const starts = tags.flatMap(({ code }, i) => (code === 0 ? [i] : []));
  return starts.map((start, i) => {
    const { value, line } = tags[start] as Tag;
    return { name: value, line, tags: tags.slice(start + 1, starts[i + 1] ?? tags.length) };
  });
};

const groupOf = ({ tags }: Entity, code: number): string | undefined =>
  tags.find((tag) => tag.code === code)?.value;

/** Drops what cannot be part of an outline, and a polyline's vertices with it. */
const kept = (entities: readonly Entity[], passed: Map<string, number>): readonly Entity[] => {
  let skipping = false;
  let inside = false;
  return entities.filter((one) => {
    const part = one.name === 'VERTEX' || one.name === 'SEQEND';
    // An old polyline is open until its SEQEND; the parser would wait for that for ever.
    if (part !== inside) throw outOfPlace(one);
    inside = one.name === 'POLYLINE' || one.name === 'VERTEX';
    if (part && skipping) return false;
    skipping = !KEPT.has(one.name) || (isHidden(one) && !one.name.includes('BLK') && one.name !== 'BLOCK');
    if (skipping && one.name !== 'ATTRIB') passed.set(one.name, (passed.get(one.name) ?? 0) + 1);
    if (!skipping) complete(one);
    return !skipping;
  });
};

const outOfPlace = ({ name, line }: Entity): Error =>
  drawingRefusal(
    `A ${name.slice(0, 20)} stands where a polyline’s corner or its end should, or outside one.`,
    'Save it again from a drawing program.',
    line,
  );

const complete = (one: Entity): void => {
  one.tags.forEach(checkNumber);
  const has = new Set(one.tags.map(({ code }) => code));
  const missing = (NEEDED.get(one.name) ?? []).find((code) => !has.has(code));
  const vertices = one.tags.filter(({ code }) => code === 10).length;
  const lies = one.name === 'LWPOLYLINE' && Number(groupOf(one, 90)) !== vertices;
  if (missing === undefined && !lies) return;
  const says = lies
    ? `A polyline says it has ${groupOf(one, 90)} corners and has ${vertices}.`
    : `A ${one.name} lacks its group ${missing}.`;
  throw drawingRefusal(says, 'Save it again from a drawing program.', one.line);
};

/** Points that a spline is drawn through and the directions of its ends (DXF reference, SPLINE). */
const fitGroups = ({ tags }: Entity): readonly string[] =>
  (
    [
      ['fit', 11, 21],
      ['start', 12, 22],
      ['end', 13, 23],
    ] as const
  ).flatMap(([word, x, y]) => {
    const values = tags.filter(({ code }) => code === x || code === y).map(({ value }) => value);
    return values.length > 0 ? [`${word} ${values.join(' ')}`] : [];
  });

const linesOf = (one: Entity): readonly string[] => {
  const wanted = KEPT.get(one.name) ?? [];
  const carried: string[] = [];
  const normal = [210, 220, 230].map((code) => groupOf(one, code) ?? (code === 230 ? '1' : '0'));
  if (NEEDED.has(one.name) || one.name === 'POLYLINE') carried.push(`normal ${normal.join(' ')}`);
  if (one.name === 'SPLINE') {
    const weights = one.tags.filter(({ code }) => code === 41).map(({ value }) => value);
    if (weights.length > 0) carried.push(`weights ${weights.join(' ')}`);
    carried.push(...fitGroups(one));
  }
  const tags = one.tags.filter(({ code }) => wanted.includes(code));
  return [
    '0',
    one.name,
    ...(one.name === 'BLOCK' ? [] : carried).flatMap((text) => [String(CARRIER), text]),
    ...tags.flatMap(({ code, value }) => [String(code), value]),
  ];
};
