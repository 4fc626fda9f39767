import { PanError, type Problem } from 'pan-core';

export interface Judged {
  /** Wrong when a person would have been shown a fault of the program, or a refusal that says too little. */
  readonly end: 'read' | 'refused' | 'wrong';
  readonly why: string;
  /** Processor time, so that a busy machine is not blamed on the file. */
  readonly ms: number;
}

const endOf = async (
  read: () => unknown,
  saysTooLittle: (problem: Problem) => boolean,
): Promise<Omit<Judged, 'ms'>> => {
  try {
    await read();
    return { end: 'read', why: '' };
  } catch (error) {
    if (!(error instanceof PanError)) return { end: 'wrong', why: String((error as Error)?.stack ?? error) };
    const poor = error.problems.find((problem) => problem.message === '' || saysTooLittle(problem));
    return poor === undefined
      ? { end: 'refused', why: error.problems[0]?.code ?? '' }
      : { end: 'wrong', why: `no place or no advice: ${poor.message}` };
  }
};

/** Reads something and says how that ended. */
export const judged = async (
  read: () => unknown,
  saysTooLittle: (problem: Problem) => boolean,
): Promise<Judged> => {
  const start = process.cpuUsage();
  const ended = await endOf(read, saysTooLittle);
  const { user, system } = process.cpuUsage(start);
  return { ...ended, ms: (user + system) / 1000 };
};
