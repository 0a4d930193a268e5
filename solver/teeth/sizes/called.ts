/** How a wheel is called in words. */
import type { Wheel } from '../../movement/schema.ts';

export const calledOf = (wheel: Wheel): string => wheel.name ?? wheel.id;
