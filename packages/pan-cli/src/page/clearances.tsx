import type { FitRow } from 'pan-core';
import { started } from '../terminal/plain.js';
import { pair } from '../terminal/quantity.js';
import { OutlineViews } from './outline-views.js';
import { usePage } from './state.js';
import { Said, StatusWord } from './words.js';

const Distances = ({ row }: { row: FitRow }) => {
  const { units } = usePage();
  const worst = row.worst_mm ?? row.distance_mm;
  if (worst === null) return <td colSpan={2}>not known</td>;
  const [is, wants] = pair(worst, row.allowed_mm, 'mm', units.value);
  return (
    <>
      <td class="number">{is}</td>
      <td class="number">{wants}</td>
    </>
  );
};

const Rows = ({ rows, caption }: { rows: readonly FitRow[]; caption: string }) => {
  const { clearance } = usePage();
  return (
    <div class="wide">
      <table>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">Status</th>
            <th scope="col">What</th>
            <th scope="col" class="number">
              Worst
            </th>
            <th scope="col" class="number">
              Wanted
            </th>
            <th scope="col">Between</th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.name} class={clearance.value === row.name ? 'chosen' : ''}>
              <td>
                <StatusWord status={row.status} />
              </td>
              <th scope="row">
                <button
                  type="button"
                  aria-pressed={clearance.value === row.name}
                  onClick={() => {
                    clearance.value = clearance.value === row.name ? null : row.name;
                  }}
                >
                  {row.name}
                </button>
              </th>
              <Distances row={row} />
              <td>{row.worst_between.join(' – ')}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};

/** Every clearance, worst first; one that is chosen is pointed at in the solid. */
export const Clearances = () => {
  const { data, clearance } = usePage();
  const { clearances, engine_moves, guarantee } = data.fit;
  const pointed = clearances.find(({ name }) => name === clearance.value);
  const others = clearances.filter(({ kind, status }) => kind === 'bolt' && status === 'pass').slice(1);
  return (
    <>
      {engine_moves === '' ? null : (
        <p>
          <Said text={`Each at its worst while the engine moves: ${engine_moves}.`} />
        </p>
      )}
      {pointed === undefined ? (
        <p class="fine screen-only">Choose one to see where it is.</p>
      ) : (
        <>
          <p role="status">
            <Said text={started(pointed.because)} />
          </p>
          <OutlineViews chosen={[]} at={pointed.worst_at ?? pointed.at} words={pointed.because} />
        </>
      )}
      <Rows rows={clearances.filter((row) => !others.includes(row))} caption="Nearest first" />
      {others.length === 0 ? null : (
        <details>
          <summary>{others.length} more bolts, none nearer to its limit</summary>
          <Rows rows={others} caption="Bolts" />
        </details>
      )}
      <p class="fine">
        <Said text={guarantee} />
      </p>
    </>
  );
};
