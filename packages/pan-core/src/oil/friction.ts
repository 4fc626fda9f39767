import { power } from '../numeric/index.js';
/** Flow in a tube is laminar below and turbulent above these Reynolds numbers; between, it may be either. */
export const LAMINAR_TO = 2300;
export const TURBULENT_FROM = 4000;

/** Haaland's explicit estimate of the turbulent friction factor (Darcy); Haaland 1983, within 2 % of Colebrook. */
export const haaland = (reynolds: number, roughness: number): number =>
  power(-1.8 * Math.log10(power(roughness / 3.7, 1.11) + 6.9 / reynolds), -2);

/**
 * Turbulent friction factor (Darcy) by Colebrook, 1/√f = −2·log(ε/3.7D + 2.51/(Re√f)); Newton on 1/√f from
 * Haaland's estimate. `roughness` is ε/D; Re from 4000.
 */
export const colebrook = (reynolds: number, roughness: number): number => {
  let x = 1 / Math.sqrt(haaland(reynolds, roughness));
  for (let i = 0; i < 8; i++) {
    const inside = roughness / 3.7 + (2.51 * x) / reynolds;
    const miss = x + 2 * Math.log10(inside);
    x -= miss / (1 + (2 * 2.51) / (Math.LN10 * reynolds * inside));
  }
  return power(x, -2);
};

/** Friction factor of a rough tube where Reynolds' number no longer matters, as fittings are quoted by. */
export const fullyRough = (roughness: number): number => power(2 * Math.log10(3.7 / roughness), -2);

/**
 * Darcy friction factor at any Reynolds number: 64/Re laminar, Colebrook turbulent, and a straight line
 * between 2300 and 4000, where no formula holds.
 */
export const frictionFactor = (reynolds: number, roughness: number): number => {
  if (reynolds <= LAMINAR_TO) return 64 / reynolds;
  if (reynolds >= TURBULENT_FROM) return colebrook(reynolds, roughness);
  const [low, high] = [64 / LAMINAR_TO, colebrook(TURBULENT_FROM, roughness)];
  return low + ((high - low) * (reynolds - LAMINAR_TO)) / (TURBULENT_FROM - LAMINAR_TO);
};
