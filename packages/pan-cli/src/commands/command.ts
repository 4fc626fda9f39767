/** 0: no fail and nothing that must be known is unknown. 1: a fail or such an unknown. 2: wrong input. 3: could not write. */
export type ExitCode = 0 | 1 | 2 | 3;

export type LengthUnits = 'mm' | 'in';

/** Where a command's words go, and what the far end can show. */
export interface Screen {
  /** Data: standard output. */
  readonly write: (text: string) => void;
  /** Progress and messages: standard error. */
  readonly tell: (text: string) => void;
  /** Columns a line may fill. */
  readonly width: number;
  readonly colour: boolean;
  readonly units: LengthUnits;
  readonly json: boolean;
  /** Both ends are a terminal, so a question can be asked. */
  readonly interactive: boolean;
}

export interface OptionSpec {
  /** A flag stands alone; text takes exactly one value. */
  readonly kind: 'flag' | 'text';
  readonly what: string;
  /** Values allowed, where there are only a few. */
  readonly choices?: readonly string[];
  /** It may be given more than once; each stands on a line of its own. */
  readonly many?: boolean;
}

/** What the user typed after the command's name, checked for spelling and repeats but not yet for meaning. */
export interface Given {
  /** Empty where the command stands alone. */
  readonly file: string;
  readonly options: Readonly<Record<string, string | true | undefined>>;
}

export type Run = (given: Given, screen: Screen) => Promise<ExitCode>;

export interface CommandSpec {
  readonly name: string;
  readonly what: string;
  /** What the one word after the name is, for the help text. */
  readonly file: string;
  /** What that word may be, where it names no file. */
  readonly words?: readonly string[];
  /** Whether the command also runs without that word. */
  readonly mayStandAlone?: true;
  readonly options: Readonly<Record<string, OptionSpec>>;
  /** Command and what it is good for. */
  readonly examples: readonly (readonly [string, string])[];
  /** Loads the command's own code only when it runs. */
  readonly load: () => Promise<Run>;
}
