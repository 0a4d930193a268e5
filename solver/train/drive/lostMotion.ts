/** How far each hand can be moved with the drive held: backlash of the depths on its way, carried to the hand. */
import type { ArborId, IndicationId, RuleId, WheelId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import type { Link } from '../turning/linkage.ts';
import { divide, isZero, toNumber } from '../turning/rational.ts';
import { otherEnd } from '../turning/trains.ts';
import type { Turning } from '../turning/turning.ts';
import { carriedSlips } from './carriedSlip.ts';

/** The free movement of one hand, and which depths it comes from. */
export interface LostMotion {
  readonly id: IndicationId;
  readonly arbor: ArborId;
  readonly angleDeg: number;
  /** Time that the hand moves through in that angle, seconds. */
  readonly seconds: number;
  /** Share of each depth on the way, from the drive to the hand, degrees at the hand. */
  readonly shares: readonly { readonly depth: RuleId; readonly angleDeg: number }[];
}

/**
 * Lost motion at each indication.
 *
 * @param backlashOf play along the pitch line of a depth, mm (0 where unknown): contact of the real forms gives it
 * @param shakeOf    side shake of an arbor at its wheel, mm (whole play, not half): as the load turns round, the arbor
 *                   goes over to the other side of its holes, and the teeth with it
 * A play j at a wheel of pitch radius r is j/r there, and at the hand that times the ratio of their rates. Where arbors
 * are carried round, the play moves the arm as well: see `carriedSlip.ts`.
 */
export function lostMotionOf(
  movement: Movement,
  turning: Turning,
  backlashOf: (depth: RuleId) => number,
  shakeOf: (arbor: ArborId) => number = () => 0,
): readonly LostMotion[] {
  const sizes = new Map(movement.wheels.map((wheel) => [wheel.id, sizeOfWheel(wheel, movement).pitchRadius]));
  const playOf = (link: Link): number => backlashOf(link.id as RuleId) + shakeOf(link.from) + shakeOf(link.to); // links of kind depth carry their rule
  const isCarried = turning.links.some(({ arm }) => arm !== undefined);
  const sharesAt = isCarried ? carriedShares(movement, turning, sizes, playOf) : plainShares(turning, sizes, playOf);
  return turning.indications.flatMap(({ id, arbor }): LostMotion[] => {
    const rate = turning.arbors.get(arbor)?.rate;
    if (!rate || isZero(rate.turns) || rate.periodSeconds === undefined) return [];
    const shares = sharesAt(arbor);
    const angleDeg = shares.reduce((sum, share) => sum + share.angleDeg, 0);
    return [{ id, arbor, angleDeg, seconds: (angleDeg / 360) * rate.periodSeconds, shares }];
  });
}

type Shares = LostMotion['shares'];
type Radii = ReadonlyMap<WheelId, number>;

const DEGREES = 180 / Math.PI;

/** Shares where every axis stands on the plates: along the way from the drive, by the ratio of the rates. */
function plainShares(turning: Turning, radii: Radii, playOf: (link: Link) => number): (hand: ArborId) => Shares {
  return (hand) => {
    const handTurns = turning.arbors.get(hand)?.rate?.turns;
    return wayTo(hand, turning).flatMap(({ link, at }) => {
      const wheel = link.to === at ? link.toWheel : link.fromWheel;
      const radius = wheel === undefined ? undefined : radii.get(wheel);
      const rate = turning.arbors.get(at)?.rate?.turns;
      if (link.kind !== 'depth' || !radius || !rate || isZero(rate) || !handTurns) return [];
      const ratio = Math.abs(toNumber(divide(handTurns, rate)));
      return [{ depth: link.id as RuleId, angleDeg: (playOf(link) / radius) * ratio * DEGREES }];
    });
  };
}

/** Shares where arms carry arbors round: every depth that the drive turns may move the hand. */
function carriedShares(
  movement: Movement,
  turning: Turning,
  radii: Radii,
  playOf: (link: Link) => number,
): (hand: ArborId) => Shares {
  const slipsAt = carriedSlips(movement, turning);
  return (hand) =>
    slipsAt(hand).flatMap(({ link, turn }) => {
      const radius = link.fromWheel === undefined ? undefined : radii.get(link.fromWheel);
      if (link.kind !== 'depth' || !radius || turn === 0) return [];
      const slip = (playOf(link) / radius) * link.fromTeeth;
      return [{ depth: link.id as RuleId, angleDeg: slip * turn * DEGREES }];
    });
}

/** Links from the drive to an arbor, each with the arbor that it turns. */
function wayTo(arbor: ArborId, turning: Turning): readonly { readonly link: Link; readonly at: ArborId }[] {
  const way: { link: Link; at: ArborId }[] = [];
  let at = arbor;
  for (let step = 0; step < turning.arbors.size; step++) {
    const link = turning.arbors.get(at)?.drivenBy;
    if (!link) break;
    way.unshift({ link, at });
    at = otherEnd(link, at);
  }
  return way;
}
