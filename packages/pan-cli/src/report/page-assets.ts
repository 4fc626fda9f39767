import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { PageAssets } from './page-file.js';

/** The page's program and styles, which the bundle keeps beside itself. */
export const pageAssets = (): PageAssets => {
  const beside = (name: string): string =>
    readFileSync(fileURLToPath(new URL(name, import.meta.url)), 'utf8');
  return { script: beside('./page.js'), style: beside('./page-style.css') };
};
