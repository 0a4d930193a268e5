/** How far each hand can be moved with the drive held: backlash of the depths on its way, carried to the hand. */
import type { ArborId, IndicationId, RuleId, WheelId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { divide, isZero, magnitude, subtract, toNumber } from '../turning/rational.ts';
import { otherEnd } from '../turning/trains.ts';
import type { Link, Turning } from '../turning/turning.ts';

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
 * A play j at a wheel of pitch radius r is j/r there, and at the hand that times the ratio of their rates. On a
 * carrier the rates against the arm count.
 */
export function lostMotionOf(
  movement: Movement,
  turning: Turning,
  backlashOf: (depth: RuleId) => number,
  shakeOf: (arbor: ArborId) => number = () => 0,
): readonly LostMotion[] {
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const radiusOf = (id: WheelId | undefined): number | undefined => {
    const wheel = id === undefined ? undefined : wheels.get(id);
    return wheel && sizeOfWheel(wheel, movement).pitchRadius;
  };
  return turning.indications.flatMap((indication): LostMotion[] => {
    const hand = turning.arbors.get(indication.arbor);
    if (!hand?.rate || isZero(hand.rate.turns) || hand.rate.periodSeconds === undefined) return [];
    const handTurns = hand.rate.turns;
    const shares = wayTo(indication.arbor, turning).flatMap(({ link, at }) => {
      if (link.kind !== 'depth' || link.id === undefined) return [];
      const radius = radiusOf(link.to === at ? link.toWheel : link.fromWheel);
      const rate = turning.arbors.get(at)?.rate?.turns;
      if (radius === undefined || radius <= 0 || !rate) return [];
      const arm = link.arm === undefined ? undefined : turning.arbors.get(link.arm)?.rate?.turns;
      const against = arm ? subtract(rate, arm) : rate;
      if (isZero(against)) return [];
      const ratio = Math.abs(toNumber(divide(magnitude(handTurns), magnitude(against))));
      const depth = link.id as RuleId; // links of kind depth carry their rule
      const play = backlashOf(depth) + shakeOf(link.from) + shakeOf(link.to);
      return [{ depth, angleDeg: ((play / radius) * ratio * 180) / Math.PI }];
    });
    const angleDeg = shares.reduce((sum, share) => sum + share.angleDeg, 0);
    const seconds = (angleDeg / 360) * hand.rate.periodSeconds;
    return [
      {
        id: indication.id,
        arbor: indication.arbor,
        angleDeg,
        seconds,
        shares,
      },
    ];
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
