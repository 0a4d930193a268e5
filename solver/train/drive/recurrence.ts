/** What comes round every T: arbors that turn once, teeth that pass, pairs of teeth that meet again. */
import type { ArborId, RuleId, WheelId } from '../../movement/ids.ts';
import {
  divide,
  isZero,
  leastCommonMultiple,
  magnitude,
  multiply,
  type Rational,
  rational,
  subtract,
  toNumber,
} from '../turning/rational.ts';
import type { Turning } from '../turning/turning.ts';

/** Something that comes round, and after how long. */
export interface Recurrence {
  /** `turn` an arbor once round; `tooth` one tooth of a depth after the other; `meet` the same two teeth again. */
  readonly kind: 'turn' | 'tooth' | 'meet';
  readonly parts: readonly (ArborId | WheelId)[];
  readonly depth?: RuleId;
  /** Exact, seconds. */
  readonly seconds: Rational;
}

/** Everything in a turning movement that recurs, shortest time first. */
export function recurrencesOf(turning: Turning): readonly Recurrence[] {
  const { drive } = turning;
  if (!drive) return [];
  const found: Recurrence[] = [];
  const put = (kind: Recurrence['kind'], parts: Recurrence['parts'], seconds: Rational, depth?: RuleId): void => {
    found.push({ kind, parts, seconds, ...(depth === undefined ? {} : { depth }) });
  };
  const timeOf = (turns: Rational): Rational => divide(drive.periodSeconds, magnitude(turns));
  for (const arbor of turning.arbors.values()) {
    if (arbor.rate && !isZero(arbor.rate.turns)) put('turn', [arbor.id], timeOf(arbor.rate.turns));
  }
  for (const link of turning.links) {
    const rate = turning.arbors.get(link.from)?.rate?.turns;
    if (!rate || link.kind !== 'depth' || link.fromWheel === undefined || link.toWheel === undefined) continue;
    const arm = link.arm === undefined ? undefined : turning.arbors.get(link.arm)?.rate?.turns;
    const against = arm ? subtract(rate, arm) : rate;
    if (isZero(against)) continue;
    const once = timeOf(against);
    const pair = [link.fromWheel, link.toWheel] as const;
    const depth = link.id as RuleId; // links of kind depth carry their rule
    put('tooth', pair, divide(once, rational(link.fromTeeth)), depth);
    // The same two teeth are together again when both have made whole turns.
    const other = multiply(once, rational(link.toTeeth, link.fromTeeth));
    put('meet', pair, leastCommonMultiple(once, other), depth);
  }
  return found.sort((a, b) => toNumber(a.seconds) - toNumber(b.seconds));
}

/** What may be behind a fault that shows every `seconds`, nearest first, within a share of it (default 1 in 200). */
export const suspectsAt = (turning: Turning, seconds: number, within = 0.005): readonly Recurrence[] =>
  Number.isFinite(seconds) && seconds > 0
    ? recurrencesOf(turning)
        .map((recurrence) => ({ recurrence, off: Math.abs(toNumber(recurrence.seconds) / seconds - 1) }))
        .filter(({ off }) => off <= within)
        .sort((a, b) => a.off - b.off)
        .map(({ recurrence }) => recurrence)
    : [];
