import { namedRooms, type SurgeCase } from 'pan-core';
import { useMemo } from 'preact/hooks';
import { plain } from '../terminal/plain.js';
import { Choice } from './choice.js';
import { SectionView, stillSection } from './section-view.js';
import { usePage } from './state.js';
import { rowAt, surgeRooms } from './surge-oil.js';
import { crossPlane, sidePlane } from './view-plane.js';
import { Amount, Said } from './words.js';

const [WIDE, HIGH] = [820, 230];
const [LEFT, FOOT, TOP] = [48, 30, 16];

const Series = ({ one, time }: { one: SurgeCase; time: number }) => {
  const { time_s, submergence_mm, still_submergence_mm } = one.series;
  const end = time_s[time_s.length - 1] || 1;
  const all = [...submergence_mm, ...still_submergence_mm, 0];
  const [low, high] = [Math.floor(Math.min(...all) / 10) * 10, Math.ceil(Math.max(...all) / 10) * 10];
  const x = (t: number): number => LEFT + ((WIDE - LEFT - 8) * t) / end;
  const y = (v: number): number => TOP + ((HIGH - TOP - FOOT) * (high - v)) / (high - low || 1);
  const curve = (values: readonly number[]): string =>
    values.map((v, i) => `${x(time_s[i] ?? 0).toFixed(1)},${y(v).toFixed(1)}`).join(' ');
  const words = `Depth of oil over the mouth against time in ${plain(one.name)}: ${
    one.time_to_bare_s === null ? 'never bared' : `bared after ${one.time_to_bare_s.toFixed(2)} s`
  }.`;
  return (
    <svg class="plot series" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={words}>
      <title>{words}</title>
      <rect class="bare" x={LEFT} y={y(0)} width={WIDE - LEFT - 8} height={Math.max(0, y(low) - y(0))} />
      {[low, 0, high].map((v) => (
        <g key={v}>
          <line class="ring" x1={LEFT} x2={WIDE - 8} y1={y(v)} y2={y(v)} />
          <text class="tick" x={LEFT - 4} y={y(v) + 4} text-anchor="end">
            {v}
          </text>
        </g>
      ))}
      <polyline class="still-line" points={curve(still_submergence_mm)} />
      <polyline class="swung-line" points={curve(submergence_mm)} />
      <line class="now" x1={x(time)} x2={x(time)} y1={TOP} y2={HIGH - FOOT} />
      <text class="tick" x={LEFT} y={HIGH - 6}>
        0 s
      </text>
      <text class="tick" x={x(one.load_s)} y={HIGH - 6} text-anchor="middle">
        load ends {one.load_s.toFixed(1)} s
      </text>
      <text class="tick" x={WIDE - 8} y={HIGH - 6} text-anchor="end">
        {end.toFixed(1)} s
      </text>
    </svg>
  );
};

const Moving = ({ one }: { one: SurgeCase }) => {
  const { system, surgeTime } = usePage();
  const stills = useMemo(
    () => [sidePlane, crossPlane].map((plane) => stillSection(system.model, plane(system.model))),
    [system],
  );
  const rooms = useMemo(() => namedRooms(system.model), [system]);
  const { time_s, submergence_mm } = one.series;
  const end = time_s[time_s.length - 1] ?? 0;
  const time = Math.min(surgeTime.value ?? one.least_at_s, end);
  const row = rowAt(time_s, time);
  const oil = surgeRooms(system, rooms, one, row);
  const depth = submergence_mm[row] ?? 0;
  return (
    <>
      <Series one={one} time={time} />
      <div class="slider screen-only">
        <label for="surge-time">Time</label>
        <input
          id="surge-time"
          type="range"
          min={0}
          max={end}
          step={0.02}
          value={time}
          aria-valuetext={`${time.toFixed(2)} seconds`}
          onInput={(event) => {
            surgeTime.value = Number(event.currentTarget.value);
          }}
        />
        <span>{time.toFixed(2)} s</span>
      </div>
      <p class="mouth-words">
        After {time.toFixed(2)} s: mouth {depth > 0 ? 'covered by ' : 'BARED by '}
        <Amount value={Math.abs(depth)} unit="mm" />
      </p>
      <div class="views">
        {stills.map((still) => (
          <figure key={still.plane.name}>
            <SectionView
              still={still}
              rooms={oil}
              covered={depth > 0}
              words={`The ${still.plane.name} section after ${time.toFixed(2)} s.`}
            />
          </figure>
        ))}
      </div>
    </>
  );
};

/** The oil through each case over time, with the moment chosen drawn. */
export const Surge = () => {
  const { data, surgeCase, surgeTime } = usePage();
  const { surge } = data;
  if (surge === null) return <p>{data.surgeMissing}</p>;
  const one = surge.cases[surgeCase.value];
  return (
    <>
      <Choice
        class="screen-only"
        legend="Case"
        name="surge-case"
        options={surge.cases.map(({ name }, i) => [i, plain(name)] as const)}
        chosen={surgeCase.value}
        choose={(i) => {
          surgeCase.value = i;
          surgeTime.value = null;
        }}
      />
      {one === undefined ? null : (
        <>
          <p>
            <b>{plain(one.name)}</b>:{' '}
            {one.time_to_bare_s === null ? (
              'the mouth stays covered'
            ) : (
              <>
                bared after <Amount value={one.time_to_bare_s} unit="s" grounds={data.rests_on.surge_s} />
              </>
            )}
            ; least depth{' '}
            <Amount value={one.least_submergence_mm} unit="mm" grounds={data.rests_on.surge_s} /> at{' '}
            <Amount value={one.least_at_s} unit="s" />.
            {one.resolved ? '' : ' Not resolved: shorter than one swing of the oil.'}
          </p>
          <Moving one={one} />
          <p class="fine">
            Full line: surfaces swing. Broken line: they follow at once. Oil below the line at 0 bares the
            mouth.
          </p>
        </>
      )}
      <ul class="fine">
        {surge.not_modelled.map((text) => (
          <li key={text}>
            <Said text={text} />
          </li>
        ))}
      </ul>
    </>
  );
};
