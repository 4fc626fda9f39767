import { keyText } from 'pan-core';
import { assumptionLines } from '../terminal/assumptions.js';
import { usePage } from './state.js';
import { Said } from './words.js';

/** What the file does not say: defaults taken, and what must still be measured. */
export const Assumed = () => {
  const { assumed, unknown, measureAgain } = usePage().data.check;
  return (
    <>
      {unknown.length === 0 ? null : (
        <>
          <h3>Not known</h3>
          <ul>
            {unknown.map(({ path, what, needed }) => (
              <li key={keyText(path)}>
                <code>{keyText(path)}</code>: {what}; needed for {needed}
              </li>
            ))}
          </ul>
        </>
      )}
      {measureAgain.length === 0 ? null : (
        <>
          <h3>Measure again</h3>
          <ul>
            {measureAgain.map((text) => (
              <li key={text}>
                <Said text={text} />
              </li>
            ))}
          </ul>
        </>
      )}
      <h3>Taken for granted</h3>
      <p>Common practice without a source, unless told otherwise. The file can say each.</p>
      <ul>
        {assumptionLines(assumed).map((text) => (
          <li key={text}>
            <Said text={text} />
          </li>
        ))}
      </ul>
    </>
  );
};
