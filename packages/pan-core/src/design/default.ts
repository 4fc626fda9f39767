import table from './defaults.json' with { type: 'json' };

/** Names of the values taken when a file does not give them. */
export type DefaultName = keyof typeof table;

export interface Default {
  /** A quantity with its unit, or a word. */
  readonly value: string;
  readonly why: string;
}

export const defaultNamed = (name: DefaultName): Default => table[name];

export const assumedText = (name: DefaultName): string => table[name].value;
