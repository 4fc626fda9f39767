/** What the pickup's stay is called: as a part, and in clearances and their limits. */
export const STAY = 'pickup stay';
