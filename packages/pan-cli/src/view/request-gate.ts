import { timingSafeEqual } from 'node:crypto';

/** What a request is for, once it may be answered at all. */
export type Admitted = 'page' | 'changes';

/** Why a request is turned away, as the status it gets. */
export type TurnedAway = 403 | 404 | 405;

/** The parts of a request that decide. */
export interface Asked {
  readonly method: string | undefined;
  readonly url: string | undefined;
  readonly host: string | undefined;
  /** Sec-Fetch-Site: what the browser says of the page that asks. */
  readonly site: string | undefined;
}

const sameText = (a: string, b: string): boolean => {
  const [left, right] = [Buffer.from(a), Buffer.from(b)];
  return left.length === right.length && timingSafeEqual(left, right);
};

/**
 * Who may have the page: a reader on this machine who names this machine (a page from elsewhere that turned its own
 * name to the loopback address names itself) and who knows the token.
 */
export const admit = (asked: Asked, port: number, token: string): Admitted | TurnedAway => {
  if (asked.host !== `127.0.0.1:${port}` && asked.host !== `localhost:${port}`) return 403;
  if (asked.method !== 'GET' && asked.method !== 'HEAD') return 405;
  if (asked.site !== undefined && asked.site !== 'none' && asked.site !== 'same-origin') return 403;
  const [, given, rest, ...more] = (asked.url ?? '').split('/');
  if (given === undefined || more.length > 0 || !sameText(given, token)) return 404;
  if (rest === '') return 'page';
  return rest === 'changes' && asked.method === 'GET' ? 'changes' : 404;
};
