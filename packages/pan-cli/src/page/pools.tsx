import type { Signal } from '@preact/signals';
import { roomsOfAnswer } from 'pan-core';
import { useMemo } from 'preact/hooks';
import { Choice } from './choice.js';
import { SectionView, stillSection } from './section-view.js';
import { usePage } from './state.js';
import { crossPlane, planPlane, sidePlane } from './view-plane.js';
import { Amount } from './words.js';

interface SliderEntry {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly low: number;
  readonly high: number;
  readonly step: number;
  readonly value: Signal<number>;
}

const Slider = ({ id, label, unit, low, high, step, value }: SliderEntry) => {
  const move = (text: string): void => {
    const number = Number(text);
    if (text.trim() !== '' && Number.isFinite(number)) value.value = Math.min(high, Math.max(low, number));
  };
  return (
    <div class="slider">
      <label for={id}>{label}</label>
      <input
        id={id}
        type="range"
        min={low}
        max={high}
        step={step}
        value={value.value}
        onInput={(event) => move(event.currentTarget.value)}
      />
      <input
        type="number"
        aria-label={`${label}, ${unit}`}
        min={low}
        max={high}
        step={step}
        value={value.value}
        onChange={(event) => move(event.currentTarget.value)}
      />
      <span aria-hidden="true">{unit}</span>
    </div>
  );
};

/** Controls that load the car, and the oil that answers at once. */
export const Pools = () => {
  const state = usePage();
  const { system, oil, gating } = state;
  const stills = useMemo(
    () => [sidePlane, crossPlane, planPlane].map((plane) => stillSection(system.model, plane(system.model))),
    [system],
  );
  const most = Math.floor(system.body.capacity.reduce((a, b) => a + b, 0) / 1e5) / 10;
  const sliders: readonly SliderEntry[] = [
    {
      id: 'forward',
      label: 'Accelerating (braking is minus)',
      unit: 'g',
      low: -1.5,
      high: 1.5,
      step: 0.01,
      value: state.forward,
    },
    {
      id: 'left',
      label: 'Left turn (right is minus)',
      unit: 'g',
      low: -1.5,
      high: 1.5,
      step: 0.01,
      value: state.left,
    },
    { id: 'in-pan', label: 'Oil in the pan', unit: 'L', low: 0, high: most, step: 0.05, value: state.inPan },
    {
      id: 'grade',
      label: 'Uphill (downhill is minus)',
      unit: 'deg',
      low: -20,
      high: 20,
      step: 0.5,
      value: state.grade,
    },
  ];
  const found = oil.value;
  const answer = found.ok ? found.oil[gating.value] : null;
  const level = found.ok ? found.oil.report[gating.value] : null;
  return (
    <div class="pools">
      <div class="controls">
        {sliders.map((one) => (
          <Slider key={one.id} {...one} />
        ))}
        <Choice
          legend="Doors and weeps"
          name="gating"
          options={[
            ['held', 'held: tight'],
            ['settled', 'settled: open their way'],
          ]}
          chosen={gating.value}
          choose={(one) => {
            gating.value = one;
          }}
        />
      </div>
      <p class="paper-only">
        Accelerating {state.forward.value} g, left turn {state.left.value} g, uphill {state.grade.value} deg,{' '}
        <Amount value={state.inPan.value} unit="L" /> in the pan, {gating.value}.
      </p>
      <p class="mouth-words" role="status">
        {level === null ? (
          found.ok ? (
            ''
          ) : (
            found.why
          )
        ) : (
          <>
            Mouth {level.pickup.covered ? 'covered by ' : 'BARED by '}
            <Amount value={Math.abs(level.pickup.submergence_mm)} unit="mm" />
          </>
        )}
      </p>
      <div class="views">
        {stills.map((still) => (
          <figure key={still.plane.name}>
            <SectionView
              still={still}
              rooms={answer === null ? [] : roomsOfAnswer(answer)}
              covered={answer?.pickup.covered === true}
              words={`The ${still.plane.name} section: mouth ${answer?.pickup.covered === true ? 'covered' : 'bared'}.`}
            />
          </figure>
        ))}
      </div>
      <table class="pool-table">
        <thead>
          <tr>
            <th scope="col">Pool</th>
            <th scope="col" class="number">
              Holds
            </th>
            <th scope="col" class="number">
              Surface below the rail at the mouth
            </th>
          </tr>
        </thead>
        <tbody>
          {(level?.pools ?? []).map((pool, i) => (
            <tr key={i}>
              <th scope="row">{pool.has_pickup ? 'at the mouth' : `${i + 1}`}</th>
              <td class="number">
                <Amount value={pool.volume_L} unit="L" />
              </td>
              <td class="number">
                <Amount value={pool.surface_mm} unit="mm" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
};
