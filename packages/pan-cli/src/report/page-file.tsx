import { createHash } from 'node:crypto';
import { render } from 'preact-render-to-string';
import type { PageData } from '../page/data.js';
import { Page } from '../page/page.js';
import { pageState } from '../page/state.js';
import { escaped } from './svg.js';

/** What a page carries besides its data. */
export interface PageAssets {
  readonly script: string;
  readonly style: string;
}

export interface PageFile {
  readonly html: string;
  /** What the page may load and do: nothing but itself. */
  readonly policy: string;
}

const hashOf = (text: string): string => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

/** JSON that no HTML reader can take for markup. */
const inertJson = (data: unknown): string =>
  JSON.stringify(data).replace(
    /[<>&\u2028\u2029]/g,
    (mark) => `\\u${mark.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** A script may not hold what ends it. */
const inertScript = (text: string): string => text.replaceAll('</', '<\\/').replaceAll('<!--', '<\\!--');

const policyOf = (program: string, style: string, live: boolean): string =>
  [
    "default-src 'none'",
    `script-src ${hashOf(program)}`,
    `style-src ${hashOf(style)}`,
    'img-src data:',
    ...(live ? ["connect-src 'self'"] : []),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; ');

const framed = (
  title: string,
  body: string,
  { script, style }: PageAssets,
  revision: number | null,
): PageFile => {
  const program = inertScript(script);
  const policy = policyOf(program, style, revision !== null);
  const html = `<!doctype html>
<html lang="en"${revision === null ? '' : ` data-revision="${revision}"`}>
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${escaped(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<title>${escaped(title)}</title>
<link rel="icon" href="data:,">
<style>${style}</style>
</head>
<body>
${body}
<script>${program}</script>
</body>
</html>
`;
  return { html, policy };
};

/**
 * The whole page as one file that loads nothing: styles and program inside, allowed by their hashes alone.
 * With a revision it hears from the server that sent it when there is a newer one.
 */
export const pageFile = (data: PageData, assets: PageAssets, revision: number | null = null): PageFile => {
  const body = render(<Page state={pageState(data)} />);
  const kept = `<script type="application/json" id="data">${inertJson(data)}</script>`;
  return framed(data.title, `<div id="page">${body}</div>\n${kept}`, assets, revision);
};

/** What stands until there is a page, and hears of it. */
export const barePage = (title: string, assets: PageAssets): PageFile =>
  framed(title, `<main class="bare-page"><h1>${escaped(title)}</h1><p>Working it out.</p></main>`, assets, 0);
