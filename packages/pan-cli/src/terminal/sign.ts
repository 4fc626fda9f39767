import type { Grounds } from 'pan-core';

/** Signs behind a number that leans on more than the file's measurements. */
export const ASSUMED_MARK = '~';
export const MODEL_MARK = '*';

/** How sure a number is, as a sign of at most two letters; nothing for measurements and geometry alone. */
export const markOf = (grounds: Grounds | undefined): string => {
  if (grounds === undefined) return '';
  const assumed = grounds.assumed.length > 0 ? ASSUMED_MARK : '';
  return assumed + (grounds.model === null ? '' : MODEL_MARK);
};
