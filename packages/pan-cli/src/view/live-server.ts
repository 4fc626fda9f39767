import { randomBytes } from 'node:crypto';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { PanError } from 'pan-core';
import { admit } from './request-gate.js';

/** What is shown now: a page of its own, and the sentences that go over the last good one. */
export interface Shown {
  readonly html: string;
  /** Policy sent as a header; the page may then also listen for changes. */
  readonly policy: string;
  /** Counts the pages: one that opens an older one comes again. */
  readonly revision: number;
  /** What a page that opens now is told after that. */
  readonly word: Word | null;
}

/** A word to every open page: load again, or show what is wrong with the file over what stands there. */
export type Word =
  | { readonly kind: 'at'; readonly revision: number }
  | { readonly kind: 'again' }
  | { readonly kind: 'working' }
  | { readonly kind: 'fault'; readonly sentences: readonly string[] };

export interface LiveServer {
  readonly url: string;
  readonly tell: (word: Word) => void;
  readonly close: () => Promise<void>;
}

const HEADERS = {
  'Cache-Control': 'no-store',
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Cross-Origin-Resource-Policy': 'same-origin',
  'Cross-Origin-Opener-Policy': 'same-origin',
} as const;
const TURNED_AWAY = {
  403: 'Not for you',
  404: 'Nothing here',
  405: 'Only reading',
} as const;
/** A line now and then keeps the connection from being taken for dead, ms. */
const PULSE = 20_000;

const line = (word: Word): string => `data: ${JSON.stringify(word)}\n\n`;

/**
 * Serves what `shown` gives on the loopback address only, under a path nobody can guess, and writes nothing.
 *
 * @throws PanError `input-option` when the port is taken
 */
export const startLiveServer = async (shown: () => Shown, asked: number): Promise<LiveServer> => {
  const token = randomBytes(18).toString('base64url');
  const open = new Set<ServerResponse>();
  let port = asked;

  const page = (response: ServerResponse): void => {
    const { html, policy } = shown();
    response.writeHead(200, {
      ...HEADERS,
      'Content-Type': 'text/html; charset=utf-8',
      'Content-Security-Policy': policy,
    });
    response.end(html);
  };
  const changes = (response: ServerResponse): void => {
    response.writeHead(200, { ...HEADERS, 'Content-Type': 'text/event-stream; charset=utf-8' });
    response.write('retry: 500\n\n');
    const { revision, word } = shown();
    response.write(line({ kind: 'at', revision }));
    if (word !== null) response.write(line(word));
    open.add(response);
    response.on('close', () => open.delete(response));
  };
  const server = createServer((request: IncomingMessage, response: ServerResponse) => {
    const { host, 'sec-fetch-site': site } = request.headers;
    const may = admit(
      { method: request.method, url: request.url, host, site: Array.isArray(site) ? site[0] : site },
      port,
      token,
    );
    if (may === 'page') page(response);
    else if (may === 'changes') changes(response);
    else {
      response.writeHead(may, { ...HEADERS, 'Content-Type': 'text/plain; charset=utf-8' });
      response.end(`${TURNED_AWAY[may]}.\n`);
    }
  });
  await new Promise<void>((ready, failed) => {
    server.once('error', (error: NodeJS.ErrnoException) => failed(portProblem(error, asked)));
    server.listen(asked, '127.0.0.1', ready);
  });
  port = (server.address() as AddressInfo).port;
  const pulse = setInterval(() => {
    for (const response of open) response.write(':\n\n');
  }, PULSE);
  return {
    url: `http://127.0.0.1:${port}/${token}/`,
    tell: (word) => {
      for (const response of open) response.write(line(word));
    },
    close: () =>
      new Promise((closed) => {
        clearInterval(pulse);
        for (const response of open) response.end();
        server.close(() => closed());
        server.closeAllConnections();
      }),
  };
};

const portProblem = (error: NodeJS.ErrnoException, port: number): PanError =>
  new PanError({
    code: 'input-option',
    path: [],
    message: `Port ${port} cannot be used: the system said ${error.code ?? error.message}.`,
    advice: 'Leave --port out and any free port is taken.',
  });
