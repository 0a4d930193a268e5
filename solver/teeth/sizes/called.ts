/** How a wheel is called in words. */
import type { Wheel } from '../../movement/schema.ts';

/** The maker's name of a wheel, else its id. */
export const calledOf = (wheel: Wheel): string => wheel.name ?? wheel.id;
