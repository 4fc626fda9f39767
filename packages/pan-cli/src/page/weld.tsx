import { OutlineViews } from './outline-views.js';
import { markedParts } from './solid.js';
import { usePage } from './state.js';
import { Amount, Said } from './words.js';

/** The order of welding, a step at a time on the screen and all of it on paper. */
export const Weld = () => {
  const state = usePage();
  const { data, weldStep } = state;
  const last = data.weld.length;
  const chosen = markedParts(state);
  const go = (by: number) => () => {
    weldStep.value = Math.min(last, Math.max(0, weldStep.value + by));
  };
  return (
    <>
      <p class="screen-only">
        <button type="button" onClick={go(-1)} disabled={weldStep.value === 0}>
          Step back
        </button>{' '}
        <button type="button" onClick={go(1)} disabled={weldStep.value === last}>
          Next step
        </button>{' '}
        <span role="status">
          {weldStep.value === 0 ? 'No step marked' : `Step ${weldStep.value} of ${last}`}
        </span>
      </p>
      <div class="screen-only">
        <OutlineViews
          chosen={chosen}
          at={null}
          words={chosen.length === 0 ? 'No part marked.' : `Marked: ${chosen.join(', ')}.`}
        />
      </div>
      <ol class="weld">
        {data.weld.map((step, i) => (
          <li
            key={step.title}
            class={weldStep.value === i + 1 ? 'chosen' : ''}
            aria-current={weldStep.value === i + 1 ? 'step' : undefined}
          >
            <h3>{step.title}</h3>
            {step.lines.map((line) => (
              <p key={line}>
                <Said text={line} />
              </p>
            ))}
            {step.seams.length === 0 ? null : (
              <ul>
                {step.seams.map((seam) => (
                  <li key={seam.name}>
                    S{seam.number} {seam.name}: {seam.joint} {seam.side}, {seam.run},{' '}
                    <Amount value={seam.length} unit="mm" />
                    {seam.closedBy === null ? '' : `; closed off later by ${seam.closedBy}`}
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ol>
    </>
  );
};
