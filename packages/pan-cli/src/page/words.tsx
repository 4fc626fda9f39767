import type { Check, Grounds, Status } from 'pan-core';
import { stateWord } from '../terminal/check-numbers.js';
import { plain, started } from '../terminal/plain.js';
import { quantity, sentence } from '../terminal/quantity.js';
import { markOf } from '../terminal/sign.js';
import { usePage } from './state.js';

/** A number with its unit in the units chosen, and the sign of what it leans on. */
export const Amount = ({
  value,
  unit,
  grounds,
}: {
  value: number | null;
  unit: string;
  grounds?: Grounds | undefined;
}) => {
  const { units } = usePage();
  if (value === null) return <span class="unknown">not known</span>;
  return (
    <span class="amount">
      {quantity(value, unit, units.value)}
      <GroundsMark grounds={grounds} />
    </span>
  );
};

/** A sentence of a report in the units chosen. */
export const Said = ({ text }: { text: string }) => {
  const { units } = usePage();
  return <>{sentence(plain(text), units.value)}</>;
};

/** Why a check ends as it does, and what to change. */
export const Reason = ({ check }: { check: Check }) => (
  <>
    <p>
      <Said text={started(check.because)} />
    </p>
    {check.try === '' ? null : (
      <p class="try">
        <Said text={started(check.try)} />
      </p>
    )}
  </>
);

/** The sign behind a number; its text says in full what the number leans on. */
export const GroundsMark = ({ grounds }: { grounds?: Grounds | undefined }) => {
  const sign = markOf(grounds);
  if (grounds === undefined || sign === '') return null;
  const reasons = [
    ...(grounds.assumed.length > 0 ? [`assumed: ${grounds.assumed.join(', ')}`] : []),
    ...(grounds.model === null ? [] : [`model: ${grounds.model}`]),
  ].join('; ');
  return (
    <abbr class="sign" title={reasons}>
      {sign}
    </abbr>
  );
};

/** Shapes as well as colours, for who cannot tell these apart. */
const SHAPES: Readonly<Record<Status, string>> = { pass: '○', warn: '△', fail: '✕', unknown: '?' };

export const StatusWord = ({ status }: { status: Status }) => (
  <span class={`status ${status}`}>
    <span aria-hidden="true">{SHAPES[status]}</span> {stateWord(status)}
  </span>
);
