/** Where planet wheels between a sun wheel and a ring can stand. */
import { FITS_TEETH } from './ringClosure.ts';

/** Whether planets go in where they are wanted. */
export interface PlanetSpacing {
  /** Whether every planet can be put in. */
  readonly fits: boolean;
  /** For each planet: the wanted angle, how many teeth it misses by, and the nearest angle at which it goes in, degrees. */
  readonly planets: readonly { readonly angleDeg: number; readonly missTeeth: number; readonly nearestDeg: number }[];
}

/**
 * Planets at given angles about the sun (the first taken as right), or `count` equally spaced ones. Single planet
 * wheels with outside teeth between a sun of `sunTeeth` and a ring of `ringTeeth` go in at whole steps of
 * 360/(sun + ring) degrees from the first. Source: the corollary of the ring condition (ringClosure.ts), common
 * practice for epicyclic trains.
 */
export function planetSpacing(sunTeeth: number, ringTeeth: number, planets: number | readonly number[]): PlanetSpacing {
  const angles =
    typeof planets === 'number' ? Array.from({ length: planets }, (_, index) => (360 * index) / planets) : planets;
  const step = 360 / (sunTeeth + ringTeeth);
  const first = angles[0] ?? 0;
  const placed = angles.map((angleDeg) => {
    const steps = (angleDeg - first) / step;
    return { angleDeg, missTeeth: steps - Math.round(steps), nearestDeg: first + Math.round(steps) * step };
  });
  return { fits: placed.every(({ missTeeth }) => Math.abs(missTeeth) <= FITS_TEETH), planets: placed };
}
