import { existsSync } from 'node:fs';
import { type Browser, chromium, type Page } from 'playwright-core';

const PROGRAM = '/usr/bin/chromium';
export const MISSING_BROWSER = 'skipped: chromium missing';
export const hasBrowser = (): boolean => existsSync(PROGRAM);

const QUIET = [
  '--no-sandbox',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--disable-quic',
];
/** Solids drawn by the processor, as a machine without a graphics card can. */
const SOLIDS = ['--use-angle=swiftshader', '--enable-unsafe-swiftshader'];

/** Debian's Chromium; `solids: false` leaves it without WebGL. */
export const openBrowser = ({ solids }: { solids: boolean }): Promise<Browser> =>
  chromium.launch({
    executablePath: PROGRAM,
    args: [...QUIET, ...(solids ? SOLIDS : ['--disable-gpu', '--disable-3d-apis'])],
  });

/** Source of a function that gives a page the pixels of a picture from its base64 text. */
export const PIXELS = `async (text) => {
  const image = new Image();
  image.src = 'data:image/png;base64,' + text;
  await image.decode();
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [image.width, image.height];
  const paper = canvas.getContext('2d');
  paper.drawImage(image, 0, 0);
  return paper.getImageData(0, 0, image.width, image.height);
}`;

/** A page with everything that it says or asks for. */
export interface Watched {
  readonly page: Page;
  /** Warnings and errors of the console, and errors that nobody caught. */
  readonly complaints: string[];
  /** Addresses that it asked for. */
  readonly asked: string[];
}

export const openPage = async (
  browser: Browser,
  address: string,
  size: { readonly width: number; readonly height: number },
): Promise<Watched> => {
  const page = await browser.newPage({ viewport: { ...size } });
  const [complaints, asked]: [string[], string[]] = [[], []];
  page.on('console', (message) => {
    // The processor drawing solids is slow to read back, and says so.
    if (['error', 'warning'].includes(message.type()) && !/GPU stall|software WebGL/i.test(message.text()))
      complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(error.message));
  page.on('request', (request) => asked.push(request.url()));
  await page.goto(address);
  await page.waitForSelector('html[data-live="yes"]');
  return { page, complaints, asked };
};
