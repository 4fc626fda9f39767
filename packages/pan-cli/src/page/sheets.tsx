import type { PageFold, PagePart } from './data.js';
import { usePage } from './state.js';
import { Amount, Said } from './words.js';

const MARGIN = 12;

const Drawing = ({ part }: { part: PagePart }) => {
  const [wide, high] = part.size_mm;
  const words = `${part.name}, laid flat, ${wide.toFixed(0)} by ${high.toFixed(0)} mm, ${part.folds.length} folds, ${part.openings.length} openings`;
  const low = part.corner;
  const size = Math.max(wide, high) / 22;
  return (
    <svg
      class="part"
      viewBox={`${low[0] - MARGIN} ${low[1] - MARGIN} ${wide + 2 * MARGIN} ${high + 2 * MARGIN}`}
      role="img"
      aria-label={words}
    >
      <title>{words}</title>
      <path class="cut" d={[part.outline, ...part.openings].join('')} />
      {part.marks.map((d) => (
        <path key={d} class="scribe" d={d} />
      ))}
      {part.folds.map((fold, i) => (
        <g key={fold.name}>
          <line class="fold" x1={fold.from[0]} y1={fold.from[1]} x2={fold.to[0]} y2={fold.to[1]} />
          <text
            class="fold-number"
            font-size={size}
            x={(fold.from[0] + fold.to[0]) / 2 + size / 4}
            y={(fold.from[1] + fold.to[1]) / 2 + size / 3}
          >
            {i + 1}
          </text>
        </g>
      ))}
    </svg>
  );
};

const Folds = ({ folds }: { folds: readonly PageFold[] }) => (
  <ol>
    {folds.map((fold) => (
      <li key={fold.name}>
        {fold.name}: {fold.direction} {fold.angle_deg.toFixed(1)}°, inside radius{' '}
        <Amount value={fold.radius_mm} unit="mm" />
      </li>
    ))}
  </ol>
);

/** Every part laid flat. Not to scale: what is cut is in the cut set. */
export const Sheets = () => {
  const { data } = usePage();
  if (data.partsMissing !== '') return <p>{data.partsMissing}</p>;
  return (
    <>
      <p>To look at, not to cut from: the cut set has every part as DXF and at full size on paper.</p>
      <div class="parts">
        {data.parts.map((part) => (
          <article key={part.name} class="part-sheet">
            <h3>
              {part.name}
              {part.quantity === 1 ? '' : ` × ${part.quantity}`}
            </h3>
            <Drawing part={part} />
            <p>
              {part.material}, <Amount value={part.thickness_mm} unit="mm" />;{' '}
              <Amount value={part.size_mm[0]} unit="mm" /> by <Amount value={part.size_mm[1]} unit="mm" />,{' '}
              <Amount value={part.mass_kg} unit="kg" />
              {part.face === 'either' ? '' : `; ${part.face} up`}.
            </p>
            {part.folds.length === 0 ? null : <Folds folds={part.folds} />}
            {part.notes.length === 0 ? null : (
              <ul class="fine">
                {part.notes.map((note) => (
                  <li key={note}>
                    <Said text={note} />
                  </li>
                ))}
              </ul>
            )}
          </article>
        ))}
      </div>
    </>
  );
};
