import { type Assumption, assumedFor, type FillKind, type Grounds, groundsBy, keyText } from 'pan-core';

/** What the numbers of a screen lean on, and the assumptions behind them. */
export interface Sureness {
  readonly rests_on: Readonly<Record<string, Grounds>>;
  readonly assumed: readonly Assumption[];
}

/** Grounds of a screen's numbers by name, for this kind of fill, with only the assumptions that they lean on. */
export const surenessOf = (
  ids: readonly string[],
  fill: FillKind,
  assumed: readonly Assumption[],
): Sureness => {
  const rests_on = groundsBy(ids, assumedFor(fill, assumed));
  const used = new Set(Object.values(rests_on).flatMap((grounds) => grounds.assumed));
  return {
    rests_on,
    assumed: assumed.filter(({ path }) => used.has(path.join('.')) || used.has(keyText(path))),
  };
};
