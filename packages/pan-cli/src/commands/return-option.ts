import { type Design, nearestWord, PanError, type ReturnPlace } from 'pan-core';

const PLACES = ['front', 'rear', 'throws'] as const;
const POINT = /^([-+]?\d+(?:\.\d+)?)\s*,\s*([-+]?\d+(?:\.\d+)?)\s*,\s*([-+]?\d+(?:\.\d+)?)$/;
/** How far inside its seat a bung's oil is taken to come in, mm. */
const INSIDE = 5;

/**
 * `--return`: an end of the pan, the throws, a bung of the design by its name, or a point x,y,z in mm.
 *
 * @throws PanError `input-option` for anything else
 */
export const returnPlace = (typed: string, design: Design): ReturnPlace => {
  const place = PLACES.find((one) => one === typed);
  if (place !== undefined) return place;
  const bung = design.bungs.find(({ name }) => name === typed);
  if (bung !== undefined) {
    const [dx, dy, dz] = [0, 1, 2].map((i) => (bung.at[i] ?? 0) - (bung.toward[i] ?? 0)) as [
      number,
      number,
      number,
    ];
    const step = INSIDE / Math.hypot(dx, dy, dz);
    return [bung.at[0] + step * dx, bung.at[1] + step * dy, bung.at[2] + step * dz];
  }
  const point = POINT.exec(typed.trim());
  if (point !== null) return [Number(point[1]), Number(point[2]), Number(point[3])];
  const known = [...PLACES, ...design.bungs.map(({ name }) => name)];
  const near = nearestWord(typed, known);
  throw new PanError({
    code: 'input-option',
    path: [],
    message: '--return must say where oil comes back into the pan.',
    expected: `${known.join(', ')}, or a point such as 200,80,-40 in mm`,
    found: typed.slice(0, 60),
    advice:
      near === null
        ? 'A turbo’s drain can be given as a bung with purpose: return.'
        : `Did you mean "${near}"?`,
  });
};
