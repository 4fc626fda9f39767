import type * as z from 'zod/mini';
import type { Fault, Place } from './fault.js';
import type { Description } from './field.js';
import { unknownKey, unlike } from './unlike.js';

/** A fault in the shape zod carries to the top; `reads` where there is a value to look at further all the same. */
export const issueOf = (fault: Fault, input: unknown, place: Place, reads: boolean): z.core.$ZodRawIssue => ({
  code: 'custom',
  input,
  continue: reads,
  path: [...place],
  params: { fault },
});

interface Placed {
  readonly fault: Fault;
  readonly place: Place;
}

/**
 * What zod found, in the words of the keys: zod decides, and what to say follows from what the key takes and
 * what stands there. One fault a place, except where a reader reported several.
 */
export const faultsOf = (
  issues: readonly z.core.$ZodIssue[],
  about: Description,
  raw: unknown,
): readonly Placed[] => {
  const told = new Set<string>();
  return issues.flatMap((issue): readonly Placed[] => {
    const place = issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part));
    if (issue.code === 'custom' && issue.params?.fault !== undefined) {
      return [{ fault: issue.params.fault as Fault, place }];
    }
    const here = descriptionAt(about, place);
    if (issue.code === 'unrecognized_keys' && here.form === 'section') {
      const names = Object.keys(here.keys);
      return issue.keys.map((key) => ({ fault: unknownKey(key, names), place: [...place, key] }));
    }
    const key = JSON.stringify(place);
    if (told.has(key)) return [];
    told.add(key);
    return [{ fault: unlike(here, valueAt(raw, place)), place }];
  });
};

const descriptionAt = (about: Description, place: Place): Description =>
  place.reduce<Description>((here, part) => {
    const next =
      here.form === 'section'
        ? here.keys[part]
        : here.form === 'list'
          ? here.of
          : here.form === 'tuple'
            ? here.of[Number(part)]
            : undefined;
    return next ?? here;
  }, about);

const valueAt = (raw: unknown, place: Place): unknown =>
  place.reduce<unknown>(
    (here, part) => (typeof here === 'object' && here !== null ? Reflect.get(here, part) : undefined),
    raw,
  );
