/** What two solids owe each other: nothing, or a least gap in plan and a least gap in height. */
import type { ArborId, PartId, WheelId } from '../../movement/ids.ts';
import { type BodyKind, type Movement, meshOfCoupling } from '../../movement/schema.ts';
import { TOUCH } from '../../tolerances.ts';
import type { Solid } from '../solids/solid.ts';

/** Least gaps, mm. */
export interface PairTerms {
  readonly plan: number;
  readonly height: number;
}

/** As much of a solid as decides what it owes. */
type Party = Pick<Solid, 'part' | 'role' | 'arbor' | 'carried'>;

/** Looks up what a pair owes; `undefined` where the two may touch or pass through each other by intent. */
export type TermsOf = (first: Party, second: Party) => PairTerms | undefined;

const FIXED = new Set<Solid['role']>(['post', 'wall', 'plate']);
const BY_BEARING = new Set<Solid['role']>(['arbor', 'collar']);

/** Parts that others of their axis run on or stand against. */
const RUNS_ON = new Set<Solid['role']>(['arbor', 'collar', 'hub']);

/** An arm passes through what it carries. */
function carries(arm: Party, other: Party): boolean {
  return arm.role === 'swept' && arm.arbor !== undefined && other.carried?.[0]?.arm === arm.arbor;
}

/** The kind under which the movement states limits for a solid. */
export function bodyKindOf({ role }: Pick<Solid, 'role'>): BodyKind {
  return role === 'swept' ? 'hand' : role;
}

/** Largest gap in plan that any pair owes, mm: no solid need be looked for farther away. */
export function largestPlanLimit({ limits }: Movement): number {
  return Math.max(limits.radialGap, limits.wallGap, ...(limits.pairs ?? []).map(({ plan = 0 }) => plan));
}

/** Gathers the movement's meshes and pipes once, and answers for any pair. */
export function pairTermsFor(movement: Movement): TermsOf {
  const usual = usualTermsFor(movement);
  const { pairs = [] } = movement.limits;
  if (pairs.length === 0) return usual;
  const stated = new Map<string, (typeof pairs)[number]>();
  // From the last to the first, so that the first one that fits stays.
  for (const pair of [...pairs].reverse()) stated.set(pairKey(...pair.between), pair);
  return (first, second) => {
    const terms = usual(first, second);
    // What may touch by intent (a pipe on its arbor, a post on its plate) owes nothing whatever is stated.
    if (!terms || (terms.plan === 0 && terms.height === 0)) return terms;
    const own = stated.get(pairKey(bodyKindOf(first), bodyKindOf(second)));
    return own ? { plan: own.plan ?? terms.plan, height: own.height ?? terms.height } : terms;
  };
}

/**
 * What two parts owe each other in plan, mm, before anything is drawn: the same limits that the check holds them
 * against.
 *
 * @returns a function of two wheels, arbors, posts or walls; it gives `undefined` where the two may touch or pass
 * through each other by intent, and for an id that has no body in plan (a mark, a plate, an opening)
 */
export function planGapsOwed(movement: Movement): (first: PartId, second: PartId) => number | undefined {
  const termsOf = pairTermsFor(movement);
  const parties = new Map<PartId, Party>();
  for (const { id } of movement.arbors) parties.set(id, { part: id, role: 'arbor', arbor: id });
  for (const { id, arbor } of movement.wheels) parties.set(id, { part: id, role: 'wheel', arbor });
  for (const { id } of movement.posts) parties.set(id, { part: id, role: 'post' });
  for (const { id } of movement.walls) parties.set(id, { part: id, role: 'wall' });
  return (first, second) => {
    const [a, b] = [parties.get(first), parties.get(second)];
    return a && b && termsOf(a, b)?.plan;
  };
}

/** The terms by the movement's general limits. */
function usualTermsFor(movement: Movement): TermsOf {
  const meshes = meshingPairs(movement);
  const seated = seatedPairs(movement);
  const onPurpose = new Set(movement.posts.flatMap(({ id, fixedTo }) => (fixedTo ? [pairKey(id, fixedTo.wall)] : [])));
  const roots = axisRoots(movement);
  const { radialGap, heightGap, wallGap } = movement.limits;
  return (first, second) => {
    if (first.part === second.part) return undefined;
    if (FIXED.has(first.role) && FIXED.has(second.role)) {
      return onPurpose.has(pairKey(first.part, second.part)) ? undefined : fixedTerms(first, second);
    }
    if (first.arbor !== undefined && first.arbor === second.arbor) {
      return seated.has(pairKey(first.part, second.part)) ? undefined : sameArborTerms(first, second);
    }
    if (first.role === 'wheel' && second.role === 'wheel' && meshes.has(pairKey(first.part, second.part))) {
      return undefined;
    }
    if (carries(first, second) || carries(second, first)) return undefined;
    if (first.role === 'plate' || second.role === 'plate') {
      const other = first.role === 'plate' ? second : first;
      // Arbors and collars run in and on plates; what they bear on is the bearing's business.
      if (BY_BEARING.has(other.role)) return undefined;
      return { plan: wallGap, height: other.role === 'hub' ? 0 : heightGap };
    }
    if (first.role === 'wall' || second.role === 'wall') return { plan: wallGap, height: heightGap };
    if (first.arbor !== undefined && second.arbor !== undefined) {
      // Pipes on one axis run on each other: radially they may touch, and so may shoulders.
      const coaxial = roots.get(first.arbor) === roots.get(second.arbor);
      if (coaxial && (RUNS_ON.has(first.role) || RUNS_ON.has(second.role))) return { plan: 0, height: 0 };
    }
    return { plan: radialGap, height: heightGap };
  };
}

/** Posts stand on plates and may touch walls; two posts, or a post and a wall, must not share space. */
function fixedTerms(first: Party, second: Party): PairTerms | undefined {
  if (first.role === 'plate' || second.role === 'plate') return undefined;
  return first.role === 'wall' && second.role === 'wall' ? undefined : { plan: 0, height: 0 };
}

/** Two wheels on one arbor may touch but not share a height; the rest is one piece. */
function sameArborTerms(first: Party, second: Party): PairTerms | undefined {
  return first.role === 'wheel' && second.role === 'wheel' ? { plan: 0, height: 0 } : undefined;
}

/**
 * Wheels of one arbor that were drawn against each other, of which one was found thicker since: they push each other along
 * and stand in no other's place. Their stack tells what is left.
 */
function seatedPairs({ wheels }: Movement): ReadonlySet<string> {
  const seated = new Set<string>();
  if (!wheels.some(({ asDrawn }) => asDrawn?.thickness !== undefined)) return seated;
  for (const lower of wheels) {
    const top = lower.level + (lower.asDrawn?.thickness ?? lower.thickness);
    for (const upper of wheels) {
      if (upper !== lower && upper.arbor === lower.arbor && Math.abs(upper.level - top) <= TOUCH) {
        seated.add(pairKey(lower.id, upper.id));
      }
    }
  }
  return seated;
}

/** Key of an unordered pair. */
export function pairKey(a: string, b: string): string {
  return a < b ? `${a} ${b}` : `${b} ${a}`;
}

/** Wheels that mesh by a depth or a contrate coupling. */
export function meshingPairs(movement: Movement): ReadonlySet<string> {
  const keys = new Set<string>();
  const add = ([a, b]: readonly [WheelId, WheelId]): void => {
    keys.add(pairKey(a, b));
  };
  for (const rule of movement.rules) if (rule.kind === 'depth' && !rule.leaveOut) add(rule.wheels);
  for (const coupling of movement.couplings) {
    const pair = meshOfCoupling(coupling);
    if (pair) add(pair);
  }
  return keys;
}

/** For each arbor the one at the bottom of its chain of pipes. */
export function axisRoots(movement: Movement): ReadonlyMap<ArborId, ArborId> {
  const rides = new Map(movement.arbors.map((arbor) => [arbor.id, arbor.ridesOn]));
  const roots = new Map<ArborId, ArborId>();
  for (const { id } of movement.arbors) {
    let root = id;
    // A chain cannot be longer than the list: a ring of pipes is refused on reading, and ends here all the same.
    for (let step = 0; step < movement.arbors.length; step++) {
      const below = rides.get(root);
      if (below === undefined) break;
      root = below;
    }
    roots.set(id, root);
  }
  return roots;
}
