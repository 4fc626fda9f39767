/** Keys from the top of the file the way a reader would write them: `pan.floor_inside[2]`. */
export const keyText = (path: readonly (string | number)[]): string =>
  path.reduce<string>(
    (text, part) => (typeof part === 'number' ? `${text}[${part}]` : text === '' ? part : `${text}.${part}`),
    '',
  );
