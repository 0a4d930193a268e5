/** Arms: they turn nothing by teeth; `turning/axes.ts` reckons with what they carry. */

/** An arm joins no two arbors. */
export const carrierJoins = (): undefined => undefined;
