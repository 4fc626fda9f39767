const LOG_IT = 'not proof: fit an oil-pressure warning and log it before driving hard';

/** Sentences that must never be missing where they belong; kept word for word. */
export const SAYINGS = Object.freeze({
  cut: 'Prove a mock-up on block and car first; check the 100 mm square',
  assembly: 'Turn the crank two full turns by hand with clay on floor, lid and tube; wash out every chip',
  weld: 'Never chlorinated cleaner near an arc; clean and vent',
  leakTest: 'Water, or 2–3 psi air, never over 5, regulator and relief, stand aside',
  fit: 'Never work under an engine held only by a hoist',
  dipstick: 'Confirm: pour a measured quantity, wait 15 minutes, mark',
  geometry: `Still-oil geometry, ${LOG_IT}`,
  flow: `Still-oil geometry with flow between bays, ${LOG_IT}`,
});
