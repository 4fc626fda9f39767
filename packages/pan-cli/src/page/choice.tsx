import type { ComponentChildren } from 'preact';

/** One of a few, as round buttons under a legend; `children` stand behind them. */
export const Choice = <T extends string | number>({
  legend,
  name,
  options,
  chosen,
  choose,
  class: kind,
  children,
}: {
  legend: string;
  name: string;
  options: readonly (readonly [T, string])[];
  chosen: T;
  choose: (one: T) => void;
  class?: string;
  children?: ComponentChildren;
}) => (
  <fieldset class={kind}>
    <legend>{legend}</legend>
    {options.map(([one, words]) => (
      <label key={one}>
        <input type="radio" name={name} value={one} checked={chosen === one} onChange={() => choose(one)} />
        {words}
      </label>
    ))}
    {children}
  </fieldset>
);
