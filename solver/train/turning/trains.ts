/**
 * Links gathered into trains: sets of arbors that, seen from one arm (or from the plates), turn in fixed ratios.
 *
 * Each train has one unknown, the rate of its first arbor against the arm; the others are that times an exact
 * fraction. Going round a closed ring must come back to the same fraction; if not, the ring is locked and every
 * rate against that arm is nothing.
 */
import type { ArborId } from '../../movement/ids.ts';
import type { Link, LockedRing } from './linkage.ts';
import { divide, equals, multiply, negate, ONE, type Rational, rational } from './rational.ts';

/** Arbors that turn in fixed ratios as seen from one arm, or from the plates where there is none. */
export interface Train {
  readonly arm?: ArborId;
  /** Rate against the arm, in turns of the first arbor. */
  readonly ratios: ReadonlyMap<ArborId, Rational>;
  /** The link by which each was reached; none for the first. */
  readonly reachedBy: ReadonlyMap<ArborId, Link>;
  readonly rings: readonly LockedRing[];
}

/** Signed turns of `to` for one turn of `from`, both against the arm. */
export function ratioOf(link: Link): Rational {
  const ratio = rational(link.fromTeeth, link.toTeeth);
  return link.sense > 0 ? ratio : negate(ratio);
}

/** The arbor at the far end of a link. */
export const otherEnd = (link: Link, arbor: ArborId): ArborId => (link.from === arbor ? link.to : link.from);

/** Signed turns of the far end for one turn of `arbor`. */
export function ratioFrom(link: Link, arbor: ArborId): Rational {
  const ratio = ratioOf(link);
  return link.from === arbor ? ratio : divide(ONE, ratio);
}

/** Arbors and links of the ring that `closing` shuts in a tree of links. */
export function ringThrough(
  closing: Link,
  reachedBy: ReadonlyMap<ArborId, Link>,
): { readonly arbors: readonly ArborId[]; readonly links: readonly Link[] } {
  const wayUp = (start: ArborId): { arbors: ArborId[]; links: Link[] } => {
    const arbors = [start];
    const links: Link[] = [];
    let at = start;
    for (let link = reachedBy.get(at); link; link = reachedBy.get(at)) {
      at = otherEnd(link, at);
      links.push(link);
      arbors.push(at);
    }
    return { arbors, links };
  };
  const left = wayUp(closing.from);
  const right = wayUp(closing.to);
  // Drop the common stem above the place where both ways meet.
  const onRight = new Map(right.arbors.map((arbor, index) => [arbor, index]));
  const meet = left.arbors.findIndex((arbor) => onRight.has(arbor));
  const apex = left.arbors[meet] ?? closing.from;
  const far = onRight.get(apex) ?? 0;
  return {
    arbors: [...left.arbors.slice(0, meet + 1).reverse(), ...right.arbors.slice(0, far)],
    links: [...left.links.slice(0, meet).reverse(), closing, ...right.links.slice(0, far)],
  };
}

function lockedRing(closing: Link, reachedBy: ReadonlyMap<ArborId, Link>): LockedRing {
  const { arbors, links } = ringThrough(closing, reachedBy);
  let once = ONE;
  let at = arbors[0] ?? closing.from;
  for (const link of links) {
    once = multiply(once, ratioFrom(link, at));
    at = otherEnd(link, at);
  }
  return { arbors, links, kind: equals(once, rational(-1)) ? 'senses' : 'ratios', onceRound: once };
}

/**
 * Trains of the links that stand on one arm (or on the plates), each walked breadth first, so that rings are short.
 *
 * @param start arbors in the order in which trains begin (the drive first)
 */
export function trainsOn(arm: ArborId | undefined, links: readonly Link[], start: readonly ArborId[]): Train[] {
  const around = new Map<ArborId, Link[]>();
  const touch = (arbor: ArborId, link: Link): void => {
    const list = around.get(arbor);
    if (list) list.push(link);
    else around.set(arbor, [link]);
  };
  for (const link of links) {
    touch(link.from, link);
    touch(link.to, link);
  }
  const seen = new Set<ArborId>();
  const trains: Train[] = [];
  for (const first of [...start, ...around.keys()]) {
    if (seen.has(first)) continue;
    const train = walk(first, around);
    for (const arbor of train.ratios.keys()) seen.add(arbor);
    trains.push(arm === undefined ? train : { arm, ...train });
  }
  return trains;
}

function walk(first: ArborId, around: ReadonlyMap<ArborId, readonly Link[]>): Omit<Train, 'arm'> {
  const ratios = new Map<ArborId, Rational>([[first, ONE]]);
  const reachedBy = new Map<ArborId, Link>();
  const used = new Set<Link>();
  const rings: LockedRing[] = [];
  const queue = [first];
  for (let index = 0; index < queue.length; index++) {
    const at = queue[index] as ArborId; // below its length
    const here = ratios.get(at) ?? ONE;
    for (const link of around.get(at) ?? []) {
      if (used.has(link)) continue;
      used.add(link);
      const far = otherEnd(link, at);
      const there = multiply(here, ratioFrom(link, at));
      const known = ratios.get(far);
      if (known === undefined) {
        ratios.set(far, there);
        reachedBy.set(far, link);
        queue.push(far);
      } else if (!equals(known, there)) rings.push(lockedRing(link, reachedBy));
    }
  }
  return { ratios, reachedBy, rings };
}
