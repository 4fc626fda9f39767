import { type Check, type Grounds, roomsOfAnswer } from 'pan-core';
import { checkNumbers } from '../terminal/check-numbers.js';
import { STATUSES, VERDICT } from '../terminal/check-order.js';
import { plain } from '../terminal/plain.js';
import { SectionView, stillSection } from './section-view.js';
import { usePage } from './state.js';
import { Neighbours, surroundingsOf } from './surroundings.js';
import { sidePlane } from './view-plane.js';
import { Amount, Reason, StatusWord } from './words.js';

const Deciding = ({ check, label }: { check: Check; label: string }) => {
  const { units } = usePage();
  const [is, wants] = checkNumbers(check, units.value);
  return (
    <div class="deciding">
      <h3>
        <span class="label">{label}</span> <StatusWord status={check.status} /> {plain(check.title, 120)}
        {is === '' ? null : (
          <>
            : <b>{is}</b>
          </>
        )}
        {wants === '' ? null : <>, wants {wants}</>}
      </h3>
      <Reason check={check} />
    </div>
  );
};

/** The pan cut lengthwise among its neighbours: at rest, and in the case that covers the mouth least. */
const Sides = () => {
  const { data, worst, system, restNow } = usePage();
  const around = surroundingsOf(data, sidePlane(system.model));
  const still = stillSection(system.model, around.plane);
  const rest = roomsOfAnswer(restNow);
  return (
    <div class="two">
      <figure>
        <SectionView
          still={still}
          rooms={rest}
          covered={restNow.pickup.covered}
          words="The pan cut lengthwise through the mouth, oil of the running engine at rest."
        >
          <Neighbours around={around} />
        </SectionView>
        <figcaption>At rest, engine running, cut through the mouth</figcaption>
      </figure>
      {worst === null ? null : (
        <figure>
          <SectionView
            still={still}
            rooms={roomsOfAnswer(worst.answer)}
            covered={worst.answer.pickup.covered}
            ghost={rest}
            words={`The same in ${plain(worst.name)}: the mouth is ${worst.answer.pickup.covered ? 'covered' : 'bared'}.`}
          >
            <Neighbours around={around} />
          </SectionView>
          <figcaption>
            Worst case: {plain(worst.name)}, {worst.answer.gating}. Mouth{' '}
            {worst.answer.pickup.covered ? 'covered by ' : 'BARED by '}
            <Amount value={Math.abs(worst.answer.pickup.submergence)} unit="mm" />. Broken line: at rest.
          </figcaption>
        </figure>
      )}
    </div>
  );
};

interface Figure {
  readonly name: string;
  readonly value: number | null;
  readonly unit: string;
  readonly grounds?: Grounds | undefined;
}

/** Oil to pour and where it stands, and the marks of the stick. */
const Figures = () => {
  const { data } = usePage();
  const { check, dipstick } = data;
  const sure = (key: string): Grounds | undefined => check.rests_on[key];
  const marks = dipstick === null ? [] : (['full', 'add'] as const);
  const rows: readonly Figure[] = [
    { name: 'Pour in', value: check.oil.poured_L, unit: 'L' },
    {
      name: 'In the pan, stopped',
      value: check.oil.stopped_in_pan_L,
      unit: 'L',
      grounds: sure('oil.stopped_in_pan_L'),
    },
    {
      name: 'In the pan, running',
      value: check.oil.running_in_pan_L,
      unit: 'L',
      grounds: sure('oil.running_in_pan_L'),
    },
    {
      name: 'Holds to the rail',
      value: check.capacity.to_rail_L,
      unit: 'L',
      grounds: sure('capacity.to_rail_L'),
    },
    {
      name: 'Rail to oil, stopped',
      value: check.levels.stopped_mm,
      unit: 'mm',
      grounds: sure('levels.stopped_mm'),
    },
    {
      name: 'Rail to oil, running',
      value: check.levels.running_mm,
      unit: 'mm',
      grounds: sure('levels.running_mm'),
    },
    ...marks.map((mark) => ({
      name: `Dipstick, end of tube to ${mark}`,
      value: dipstick?.[mark].along_mm ?? null,
      unit: 'mm',
      grounds: data.rests_on.stick_marks,
    })),
  ];
  return (
    <dl class="figures">
      {rows.map(({ name, value, unit, grounds }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <Amount value={value} unit={unit} grounds={grounds} />
          </dd>
        </div>
      ))}
    </dl>
  );
};

/** The first screen: whether it fits, what binds, the oil, and the pan cut lengthwise. */
export const Verdict = () => {
  const { check } = usePage().data;
  const counted = STATUSES.filter((s) => check.counts[s] > 0);
  return (
    <section id="verdict" aria-labelledby="verdict-h" class={`verdict ${check.verdict}`}>
      <div class="head">
        <h2 id="verdict-h">{VERDICT[check.verdict]}</h2>
        <p class="counts">
          {counted.map((s) => (
            <span key={s}>
              <StatusWord status={s} /> {check.counts[s]}
            </span>
          ))}
        </p>
      </div>
      <div class="first">
        <div>
          {check.first === null ? null : <Deciding check={check.first} label="First" />}
          {check.next === null ? null : <Deciding check={check.next} label="Next" />}
        </div>
        <Figures />
      </div>
      <Sides />
      <p class="saying">{check.sayings.join(' ')}</p>
    </section>
  );
};
