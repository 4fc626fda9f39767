import type { Status } from 'pan-core';
import pico from 'picocolors';

export interface Ink {
  readonly strong: (text: string) => string;
  readonly faint: (text: string) => string;
  readonly heading: (text: string) => string;
  readonly status: (status: Status, text: string) => string;
}

/** Colour is a second sign beside a word, never the only one. */
export const ink = (colour: boolean): Ink => {
  const c = pico.createColors(colour);
  const tones: Readonly<Record<Status, (text: string) => string>> = {
    pass: c.green,
    warn: c.yellow,
    fail: (text) => c.bold(c.red(text)),
    unknown: (text) => c.bold(c.magenta(text)),
  };
  return {
    strong: c.bold,
    faint: c.dim,
    heading: (text) => c.bold(c.cyan(text)),
    status: (status, text) => tones[status](text),
  };
};
