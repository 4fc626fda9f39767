import type { Check, Status } from 'pan-core';
import { checkNumbers } from '../terminal/check-numbers.js';
import { plain } from '../terminal/plain.js';
import { SectionView, stillSection } from './section-view.js';
import { usePage } from './state.js';
import { sidePlane } from './view-plane.js';
import { Amount, Said, StatusWord } from './words.js';

/** A pan that passes is ready to be mocked up, never simply ready: geometry is no proof. */
export const VERDICT: Readonly<Record<Status, string>> = {
  fail: 'Not ready to cut',
  unknown: 'Not ready to cut: measure first',
  warn: 'Ready for the mock-up, with warnings',
  pass: 'Ready for the mock-up',
};

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
      <p>
        <Said text={check.because} />
      </p>
      {check.try === '' ? null : (
        <p class="try">
          <Said text={check.try} />
        </p>
      )}
    </div>
  );
};

/** The first screen: whether it fits, what binds, the oil, and the pan cut lengthwise. */
export const Verdict = () => {
  const { data, worst, system, restNow } = usePage();
  const { check } = data;
  const still = stillSection(system.model, sidePlane(system.model));
  const counted = (['fail', 'unknown', 'warn', 'pass'] as const).filter((s) => check.counts[s] > 0);
  const sure = check.rests_on;
  return (
    <section id="verdict" aria-labelledby="verdict-h" class={`verdict ${check.verdict}`}>
      <h2 id="verdict-h">{VERDICT[check.verdict]}</h2>
      <p class="counts">
        {counted.map((s) => (
          <span key={s}>
            <StatusWord status={s} /> {check.counts[s]}
          </span>
        ))}
      </p>
      {check.first === null ? null : <Deciding check={check.first} label="First" />}
      {check.next === null ? null : <Deciding check={check.next} label="Next" />}
      <div class="two">
        <figure>
          <SectionView
            still={still}
            answer={restNow}
            words="The pan cut lengthwise through the mouth, oil of the running engine at rest."
          />
          <figcaption>At rest, engine running</figcaption>
        </figure>
        {worst === null ? null : (
          <figure>
            <SectionView
              still={still}
              answer={worst.answer}
              ghost={restNow}
              words={`The same in ${plain(worst.name)}: the mouth is ${worst.answer.pickup.covered ? 'covered' : 'bared'}.`}
            />
            <figcaption>
              Worst case: {plain(worst.name)}, {worst.answer.gating}. Mouth{' '}
              {worst.answer.pickup.covered ? 'covered by ' : 'bared by '}
              <Amount value={Math.abs(worst.answer.pickup.submergence)} unit="mm" />
            </figcaption>
          </figure>
        )}
      </div>
      <dl class="figures">
        <div>
          <dt>Pour in</dt>
          <dd>
            <Amount value={check.oil.poured_L} unit="L" />
          </dd>
        </div>
        <div>
          <dt>In the pan, stopped</dt>
          <dd>
            <Amount value={check.oil.stopped_in_pan_L} unit="L" grounds={sure['oil.stopped_in_pan_L']} />
          </dd>
        </div>
        <div>
          <dt>In the pan, running</dt>
          <dd>
            <Amount value={check.oil.running_in_pan_L} unit="L" grounds={sure['oil.running_in_pan_L']} />
          </dd>
        </div>
        <div>
          <dt>Holds to the rail</dt>
          <dd>
            <Amount value={check.capacity.to_rail_L} unit="L" grounds={sure['capacity.to_rail_L']} />
          </dd>
        </div>
        <div>
          <dt>Surface, stopped, below the rail</dt>
          <dd>
            <Amount value={check.levels.stopped_mm} unit="mm" grounds={sure['levels.stopped_mm']} />
          </dd>
        </div>
        <div>
          <dt>Surface, running, below the rail</dt>
          <dd>
            <Amount value={check.levels.running_mm} unit="mm" grounds={sure['levels.running_mm']} />
          </dd>
        </div>
        {data.dipstick === null
          ? null
          : (['full', 'add'] as const).map((mark) => (
              <div key={mark}>
                <dt>Dipstick, {mark} mark, from the tube’s end</dt>
                <dd>
                  <Amount
                    value={data.dipstick?.[mark].along_mm ?? null}
                    unit="mm"
                    grounds={data.rests_on.stick_marks}
                  />
                </dd>
              </div>
            ))}
      </dl>
      <p class="saying">{check.sayings.join(' ')}</p>
    </section>
  );
};
