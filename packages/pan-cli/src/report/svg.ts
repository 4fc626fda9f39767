const MARKS: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
};

/** Text safe inside an SVG element or attribute. */
export const escaped = (text: string): string => text.replace(/[&<>"']/g, (mark) => MARKS[mark] ?? '');

/** A number as SVG writes it: at most three decimals and no −0. */
export const svgNumber = (value: number): string => `${Number(value.toFixed(3)) + 0}`;

/** Numbers go through one gate, so that no NaN is ever drawn. */
const value = (given: number | string): string => {
  if (typeof given === 'string') return escaped(given);
  if (!Number.isFinite(given)) throw new RangeError(`a drawing got the number ${given}`);
  return svgNumber(given);
};

/** One element with its attributes; `inside` is markup already. */
export const element = (
  name: string,
  attributes: Readonly<Record<string, number | string>>,
  inside = '',
): string => {
  const list = Object.entries(attributes).map(([key, given]) => ` ${key}="${value(given)}"`);
  return inside === '' ? `<${name}${list.join('')}/>` : `<${name}${list.join('')}>${inside}</${name}>`;
};

export const line = (
  from: readonly [number, number],
  to: readonly [number, number],
  attributes: Readonly<Record<string, number | string>> = {},
): string => element('line', { x1: from[0], y1: from[1], x2: to[0], y2: to[1], ...attributes });

export const words = (
  at: readonly [number, number],
  text: string,
  attributes: Readonly<Record<string, number | string>> = {},
): string => element('text', { x: at[0], y: at[1], ...attributes }, escaped(text));

/** A drawing whose user unit is one millimetre on paper, on white. */
export const drawingMm = (width: number, height: number, title: string, body: readonly string[]): string =>
  `<?xml version="1.0" encoding="UTF-8"?>\n${element(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      width: `${svgNumber(width)}mm`,
      height: `${svgNumber(height)}mm`,
      viewBox: `0 0 ${svgNumber(width)} ${svgNumber(height)}`,
      'font-family': 'sans-serif',
      'font-size': 3,
    },
    `\n${[
      element('title', {}, escaped(title)),
      element('rect', { x: 0, y: 0, width, height, fill: '#ffffff' }),
      ...body,
    ].join('\n')}\n`,
  )}\n`;
