import { type Field, foundText, type Refusal, refused } from '../field/index.js';

export interface Thread {
  readonly diameter: number;
  /** null where only the diameter was asked for. */
  readonly pitch: number;
}

const common = { required: true, assumed: null, mayBeUnknown: false } as const;

const threadField = <T>(
  about: string,
  sample: string,
  pattern: RegExp,
  take: (numbers: readonly number[]) => T | null,
): Field<T> => ({
  about: { form: 'text', longest: 12, sample, about, ...common },
  read: (raw, report): T | Refusal => {
    const expected = `a metric thread such as ${sample}`;
    if (raw === undefined) {
      report({ code: 'input-missing', says: 'is missing', expected, found: 'nothing' });
      return refused;
    }
    const match = typeof raw === 'string' ? pattern.exec(raw.trim()) : null;
    const value = match === null ? null : take(match.slice(1).map(Number));
    if (value !== null) return value;
    report({ code: 'input-type', says: 'is no metric thread', expected, found: foundText(raw) });
    return refused;
  },
});

/** `M8` → 8. */
export const boltSize = (about: string): Field<number> =>
  threadField(about, 'M8', /^M(\d{1,2})$/, ([d = 0]) => (d >= 3 && d <= 20 ? d : null));

/** `M18x1.5` → 18 and 1.5. */
export const threadWithPitch = (about: string): Field<Thread> =>
  threadField(about, 'M18x1.5', /^M(\d{1,2}) ?[x×] ?(\d(?:\.\d{1,2})?)$/, ([diameter = 0, pitch = 0]) =>
    diameter >= 5 && diameter <= 40 && pitch > 0.2 && pitch < diameter / 3 ? { diameter, pitch } : null,
  );
