import { type Check, type CheckGroup, formulaOf } from 'pan-core';
import { checkNumbers } from '../terminal/check-numbers.js';
import { GROUPS, worstFirst } from '../terminal/check-order.js';
import { plain } from '../terminal/plain.js';
import { usePage } from './state.js';
import { GroundsMark, Reason, StatusWord } from './words.js';

const TITLES: Readonly<Record<CheckGroup, string>> = {
  oil: 'Oil',
  mouth: 'Mouth',
  crank: 'Crank',
  fit: 'Fit',
  sheet: 'Sheet',
  weld: 'Weld',
};

const Row = ({ check }: { check: Check }) => {
  const { data, units } = usePage();
  const [is, wants] = checkNumbers(check, units.value);
  const grounds = data.check.rests_on[check.id];
  const { formula, source, holds } = formulaOf(check.id);
  return (
    <tr>
      <td>
        <StatusWord status={check.status} />
      </td>
      <th scope="row">
        <details>
          <summary>{plain(check.title, 120)}</summary>
          <Reason check={check} />
          <p class="fine">
            {formula} <i>Source: {source}.</i>
            {holds === null ? '' : ` ${holds}`}
            {grounds === undefined || grounds.assumed.length === 0
              ? ''
              : ` Leans on assumed: ${grounds.assumed.join(', ')}.`}
            {grounds?.model == null ? '' : ` Limits of the model: ${grounds.model}.`}
          </p>
        </details>
      </th>
      <td class="number">
        {is}
        <GroundsMark grounds={grounds} />
      </td>
      <td class="number">{wants}</td>
    </tr>
  );
};

/** Every check; each opens to its reason, its formula and whose that is. */
export const Checks = () => {
  const { checks } = usePage().data.check;
  const groups = GROUPS.filter((group) => checks.some((c) => c.group === group));
  return (
    <>
      <p class="fine">
        No sign: your measurements and geometry alone. <b>~</b> leans on something assumed. <b>*</b> a model’s
        answer, with its limits. Open a row for its formula and source.
      </p>
      {groups.map((group) => (
        <div key={group} class="checks">
          <table>
            <caption>{TITLES[group]}</caption>
            <thead>
              <tr>
                <th scope="col">Status</th>
                <th scope="col">Check</th>
                <th scope="col" class="number">
                  Is
                </th>
                <th scope="col" class="number">
                  Wanted
                </th>
              </tr>
            </thead>
            <tbody>
              {worstFirst(checks.filter((c) => c.group === group)).map((check) => (
                <Row key={check.id} check={check} />
              ))}
            </tbody>
          </table>
        </div>
      ))}
    </>
  );
};
