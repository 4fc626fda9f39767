/** °F of the temperature that densities of oil are quoted at. */
const BASE_F = 60;
/** Lubricating oils, K₁ in kg/m³ per °F. */
const LUBE = 0.34878;

/**
 * Density in kg/m³ at a temperature in °C of a lubricating oil of known density at 60 °F: API MPMS 11.1,
 * α = K₁/ρ₆₀, CTL = exp(−αΔt(1 + 0.8αΔt)), Δt in °F from 60; 800 to 1164 kg/m³, −50 to 150 °C.
 */
export const oilDensity = (at60F: number, celsius: number): number => {
  const off = celsius * 1.8 + 32 - BASE_F;
  const a = (LUBE / at60F) * off;
  return at60F * Math.exp(-a * (1 + 0.8 * a));
};

/** The same turned round: density at 60 °F of an oil weighed at another temperature, kg/m³. */
export const densityAt60F = (density: number, celsius: number): number => {
  let base = density;
  for (let i = 0; i < 40; i++) base *= density / oilDensity(base, celsius);
  return base;
};
