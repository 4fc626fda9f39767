import type { LimitsReport } from 'pan-core';
import { usePage } from './state.js';
import { Amount, GroundsMark, Said } from './words.js';

/** As far out as is drawn, g. */
const MOST = 2;
const RADIUS = 150;

type Direction = LimitsReport['directions'][number];

/** Where the oil runs to: braking throws it forward, drawn up; a left turn throws it right. */
const spot = (toward: number, g: number): string => {
  const t = (toward * Math.PI) / 180;
  const r = (RADIUS * Math.min(g, MOST)) / MOST;
  return `${(r * Math.sin(t)).toFixed(1)} ${(-r * Math.cos(t)).toFixed(1)}`;
};

const outline = (directions: readonly Direction[], of: (d: Direction) => number | null): string =>
  `M${directions.map((d) => spot(d.toward_deg, of(d) ?? MOST)).join('L')}Z`;

const Ring = ({ g }: { g: number }) => (
  <>
    <circle class="ring" r={(RADIUS * g) / MOST} />
    <text class="tick" x={4} y={-(RADIUS * g) / MOST - 3}>
      {g} g
    </text>
  </>
);

const Plot = ({ report }: { report: LimitsReport }) => {
  const { directions, worst } = report;
  const words =
    worst === null
      ? 'Nothing up to 3 g bares the mouth.'
      : `Load that bares the mouth by direction; the least is ${worst.limit_g?.toFixed(2)} g ${worst.load}.`;
  return (
    <svg class="plot" viewBox="-215 -185 430 370" role="img" aria-label={words}>
      <title>{words}</title>
      <path class="safe" d={outline(directions, (d) => d.limit_g)} />
      {[0.5, 1, 1.5, 2].map((g) => (
        <Ring key={g} g={g} />
      ))}
      <path class="held-line" d={outline(directions, (d) => d.held_g)} />
      <path class="settled-line" d={outline(directions, (d) => d.settled_g)} />
      {worst === null ? null : (
        <path class="worst" d={`M0 0L${spot(worst.toward_deg, worst.limit_g ?? MOST)}`} />
      )}
      <text class="end" x={0} y={-172} text-anchor="middle">
        braking
      </text>
      <text class="end" x={0} y={180} text-anchor="middle">
        accelerating
      </text>
      <text class="end" x={160} y={5}>
        left turn
      </text>
      <text class="end" x={-160} y={5} text-anchor="end">
        right turn
      </text>
    </svg>
  );
};

/** The load that bares the mouth in every direction, what would lift it, and the least oil for each case. */
export const Limits = () => {
  const { data } = usePage();
  const { limits, rests_on } = data;
  const { worst } = limits;
  return (
    <>
      <p>
        {worst === null ? (
          'Nothing up to 3 g bares the mouth.'
        ) : (
          <>
            <b>
              <Amount value={worst.limit_g} unit="g" grounds={rests_on.limit_g} />
            </b>{' '}
            {worst.load} bares the mouth first: <Said text={worst.binding} />.
          </>
        )}
      </p>
      <div class="two">
        <figure>
          <Plot report={limits} />
          <figcaption>
            <ul class="key">
              <li>
                <i class="swatch safe" />
                covered, held and settled
              </li>
              <li>
                <i class="swatch held-line" />
                held
              </li>
              <li>
                <i class="swatch settled-line" />
                settled
              </li>
            </ul>
            Drawn to {MOST} g; on the edge the mouth is still covered there.
          </figcaption>
        </figure>
        <div>
          <table>
            <caption>Cases</caption>
            <thead>
              <tr>
                <th scope="col">Case</th>
                <th scope="col" class="number">
                  Asks
                </th>
                <th scope="col" class="number">
                  Limit
                </th>
                <th scope="col" class="number">
                  Least oil
                </th>
              </tr>
            </thead>
            <tbody>
              {limits.cases.map((one) => (
                <tr key={one.name}>
                  <th scope="row">
                    {one.name}
                    {one.covered ? '' : ': BARED'}
                  </th>
                  <td class="number">
                    <Amount value={one.asks_g} unit="g" />
                  </td>
                  <td class="number">
                    {one.limit_g === null ? 'over 3 g' : <Amount value={one.limit_g} unit="g" />}
                    <GroundsMark grounds={rests_on.limit_g} />
                  </td>
                  <td class="number">
                    {one.least_fill_L === null ? (
                      'none to the rail'
                    ) : (
                      <Amount value={one.least_fill_L} unit="L" grounds={rests_on.least_fill_L} />
                    )}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
          {limits.changes.length + limits.no_help.length === 0 ? null : (
            <>
              <h3>What lifts the least by {limits.lift_g} g</h3>
              <ul>
                {limits.changes.map(({ change, limit_g }) => (
                  <li key={change}>
                    <Said text={change} />:{' '}
                    {limit_g === null ? 'over 3 g' : <Amount value={limit_g} unit="g" />}
                  </li>
                ))}
                {limits.no_help.map(({ change, limit_g }) => (
                  <li key={change}>
                    <Said text={change} />: no more than <Amount value={limit_g} unit="g" />
                  </li>
                ))}
              </ul>
            </>
          )}
        </div>
      </div>
    </>
  );
};
