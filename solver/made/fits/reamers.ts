/** Holes from a reamer as it is: what a new one measures for a standard hole, what a worn one still cuts, and warm fits. */
import { type FitFeel, feelOf, type HoleClass, holeLimits, type OutsideTable, outsideTable } from './fits.ts';

/**
 * Diameter of a new reamer for a standard hole, mm.
 *
 * Greatest: the hole's upper limit less 15 % of its tolerance; least: 35 % of the tolerance below that, both shares rounded
 * up to a whole micrometre. Source: DIN 1420, from memory (20 H7: 20.009 to 20.017).
 *
 * @returns undefined outside the table of holes
 */
export function newReamer(size: number, hole: HoleClass): readonly [least: number, most: number] | undefined {
  const limits = holeLimits(size, hole);
  if (!limits) return undefined;
  const tolerance = Math.round((limits[1] - limits[0]) * 1000);
  const most = limits[1] - shareOf(0.15, tolerance) / 1000;
  return [most - shareOf(0.35, tolerance) / 1000, most];
}

/** A share of micrometres, rounded up; what is left of a product of decimals does not count as more. */
const shareOf = (share: number, um: number): number => Math.ceil(share * um - 1e-9);

/** A hole and the reamer that is to make it. */
export interface ReamedHole {
  readonly size: number;
  readonly hole: HoleClass;
  /** The reamer as measured, mm. */
  readonly reamer: number;
  /** How much wider than itself it cuts, mm. */
  readonly cutsOver: number;
  /** What is to run or sit in the hole, mm, where it is known. */
  readonly shaft?: number | undefined;
}

/** The hole that a reamer leaves, or why it cannot be told. */
export type Reamed =
  | {
      readonly kind: 'hole';
      readonly hole: HoleClass;
      /** The hole that it leaves, mm. */
      readonly cuts: number;
      readonly state: 'within' | 'wide' | 'worn';
      /** How much it may still wear before the hole is too small, mm; negative once it is. */
      readonly wearLeft: number;
      /** How much the hole is wider than the class allows, mm; negative while it is not. */
      readonly over: number;
      readonly feel?: FitFeel;
    }
  | OutsideTable;

/** What a reamer that measures so much leaves, against the standard hole. */
export function reamedHole({ size, hole, reamer, cutsOver, shaft }: ReamedHole): Reamed {
  const limits = holeLimits(size, hole);
  if (!limits) return outsideTable(size);
  const [least, most] = limits;
  const cuts = reamer + cutsOver;
  const wearLeft = cuts - least;
  // A tenth of a micrometre is rounding of what was typed.
  const state = cuts > most + 1e-4 ? 'wide' : wearLeft < -1e-4 ? 'worn' : 'within';
  const feel = shaft === undefined ? {} : { feel: feelOf(cuts, shaft) };
  return { kind: 'hole', hole, cuts, state, wearLeft, over: cuts - most, ...feel };
}

/** Expansion of brass, per °C: handbook value for common brass, from memory. */
const BRASS = 19e-6;
/** Play that a warm part wants to slip on without catching, mm: common practice. */
const SLIP = 0.01;
/** Warmer than this the hardness of hammered brass, lacquer and soft-soldered parts near by suffer, °C above the room. */
const TOO_WARM = 180;

/**
 * How much a brass seat is warmed so that a bush slips in cold, °C above the bush.
 *
 * @param seat, interference mm; undefined unless both are above zero
 */
export function warmingToSlip(seat: number, interference: number): Warming | undefined {
  if (!(seat > 0) || !(interference > 0)) return undefined;
  const degrees = (interference + SLIP) / (BRASS * seat);
  return { degrees, isTooWarm: degrees > TOO_WARM };
}

/** How much warmer than the bush, °C, and whether that spoils hardened brass, lacquer and soft solder. */
export interface Warming {
  readonly degrees: number;
  readonly isTooWarm: boolean;
}
