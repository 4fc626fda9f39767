import { type ErrorCode, errorCodes } from 'pan-core';
import { exitCodeOf } from './exit-code.js';

const HEAD = `# Errors by code

Every error is a plain sentence with its place, the value, the limit and what to do about it. With \`--json\` it has a
code too, which stays the same when the sentence is improved:
\`{"errors": [{"code": …, "file": …, "line": …, "column": …, "key": …, "message": …, "advice": …}]}\`, described by
[error.schema.json](json/error.schema.json). All that is wrong is told at once. This page is written by
\`node packages/pan-cli/write-key-pages.mjs\` from the list the program uses.

| exit code | |
|---|---|
| 0 | no check fails, and nothing that must be known is unknown; warnings are allowed |
| 1 | a check fails, or such a thing is unknown; not an error, and nothing below applies |
| 2 | wrong input; nothing was written |
| 3 | something could not be written, or a fault in the program; what stood there before still stands |

| code | what is wrong | exit code |
|---|---|---|
`;

/** The page of errors as Markdown. */
export const errorPage = (): string =>
  `${HEAD}${Object.entries(errorCodes)
    .map(([code, what]) => `| \`${code}\` | ${what} | ${exitCodeOf(code as ErrorCode)} |\n`)
    .join('')}`;
