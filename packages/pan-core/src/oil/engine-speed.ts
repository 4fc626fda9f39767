import type { Manoeuvre, OilPlan, SpeedCurve } from '../design/index.js';

/** A curve's value at a speed: straight between its points, constant beyond them. */
export const atSpeed = (curve: SpeedCurve, rpm: number): number => {
  const next = curve.findIndex(([speed]) => speed >= rpm);
  const [a, b] = [curve[next - 1], curve[next]];
  if (a === undefined || b === undefined) return (b ?? curve.at(-1))?.[1] ?? Number.NaN;
  return a[1] + ((b[1] - a[1]) * (rpm - a[0])) / (b[0] - a[0]);
};

/** The oil as it is at an engine speed, rev/min: held up and pump flow by their curves, where there are any. */
export const oilAtSpeed = (oil: OilPlan, rpm: number | undefined): OilPlan => {
  if (rpm === undefined || oil.bySpeed === undefined) return oil;
  const { heldUp, pump } = oil.bySpeed;
  return {
    ...oil,
    heldUp: heldUp === null ? oil.heldUp : atSpeed(heldUp, rpm),
    pump: pump === null ? oil.pump : atSpeed(pump, rpm),
  };
};

/** The oil in a manoeuvre, at its engine speed. */
export const oilIn = (oil: OilPlan, { rpm }: Pick<Manoeuvre, 'rpm'>): OilPlan => oilAtSpeed(oil, rpm);

/** The least that is held up at any speed given, mm³: it leaves most oil under the rods. */
export const leastHeldUp = ({ heldUp, bySpeed }: OilPlan): number =>
  Math.min(heldUp, ...(bySpeed?.heldUp ?? []).map(([, volume]) => volume));
