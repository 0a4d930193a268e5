/**
 * A rule that checks takes the place of one that places: which one stands back, and what moves by it.
 *
 * Only a rule of the same point may stand back (in a block, of the points that the check names): then nothing upstream
 * moves, and nothing becomes loose. The one that stands back is told to check; so is any other that would step in before
 * the wanted one.
 */
import type { PointId, RuleId } from '../../movement/ids.ts';
import { applyEdit, type Edit } from '../../movement/index.ts';
import type { Movement } from '../../movement/schema.ts';
import type { PlacedMovement } from '../placed.ts';
import { PlantedMovement } from './planted.ts';
import { plantMovement } from './plantMovement.ts';

/** How many points move, and how far at most, mm. */
export interface Moves {
  readonly count: number;
  readonly most: number;
  /** The one that moves farthest. */
  readonly farthest?: PointId;
}

/** One way to let a rule place that only checks now. */
export interface PlaceInstead {
  /** The rule that checks from then on. */
  readonly insteadOf: RuleId;
  /** Its share in what the check measures: mm for mm. */
  readonly share: number;
  readonly edit: Edit;
  readonly moves: Moves;
}

/** Movements below this are rounding of the planting, mm. */
const MOVED = 1e-7;
/** Rules that may have to be told to check beside the one that stands back. */
const MOST_TOLD = 12;

/**
 * The rules that may stand back for one that checks, the one with the largest share first: that is the one to propose.
 *
 * @returns none where the rule places already, where its own point is drilled (the metal stays), or where no rule of the
 *   same point can give way to it
 */
export function placeInstead(placed: PlacedMovement, rule: RuleId): readonly PlaceInstead[] {
  const outcome = placed.rules.get(rule);
  if (!(placed instanceof PlantedMovement) || !outcome) return [];
  if (outcome.duty !== 'checks' && outcome.duty !== 'told') return [];
  const shares = sharesIn(placed, rule);
  return [...shares]
    .sort((a, b) => b[1] - a[1])
    .flatMap(([insteadOf, share]) => {
      const way = wayFor(placed, rule, insteadOf);
      return way ? [{ insteadOf, share, ...way }] : [];
    });
}

/** Rules of the check's own point with their share in it: the largest of its parts counts. */
function sharesIn({ index }: PlantedMovement, rule: RuleId): ReadonlyMap<RuleId, number> {
  const found = new Map<RuleId, number>();
  for (const part of index.ground.networkRulesOf.get(rule) ?? []) {
    if (!index.result.checks[part]) continue;
    for (const { rule: each, share, isOwn } of index.result.shares(part)) {
      const id = isOwn ? index.ruleIdOf(each) : undefined;
      if (id !== undefined && id !== rule) found.set(id, Math.max(share, found.get(id) ?? 0));
    }
  }
  return found;
}

/** The edit that lets `rule` place instead of another, where there is one that leaves nothing loose. */
function wayFor(placed: PlacedMovement, rule: RuleId, insteadOf: RuleId): { edit: Edit; moves: Moves } | undefined {
  const told: RuleId[] = [insteadOf];
  while (told.length <= MOST_TOLD) {
    const edit: Edit = {
      kind: 'several',
      edits: [
        { kind: 'setDuty', rules: [rule], duty: 'byOrder' },
        { kind: 'setDuty', rules: told, duty: 'checks' },
      ],
    };
    const edited = applyEdit(placed.movement, edit);
    if (edited.kind === 'refused') return undefined;
    const next = plantMovement(edited.movement);
    if (next.rules.get(rule)?.duty === 'places') {
      return next.freeMotions > placed.freeMotions ? undefined : { edit, moves: movesTo(placed, next) };
    }
    const steppedIn = fresh(placed.movement, placed, next).filter((id) => id !== rule);
    if (steppedIn.length === 0) return undefined;
    told.push(...steppedIn);
  }
  return undefined;
}

/** Rules that place in the second planting and only checked in the first. */
function fresh({ rules }: Movement, before: PlacedMovement, after: PlacedMovement): RuleId[] {
  return rules.flatMap(({ id }) =>
    before.rules.get(id)?.duty === 'checks' && after.rules.get(id)?.duty === 'places' ? [id] : [],
  );
}

/** Which points stand elsewhere in a second planting. */
export function movesTo(before: PlacedMovement, after: PlacedMovement): Moves {
  let [count, most] = [0, 0];
  let farthest: PointId | undefined;
  for (const [id, { x, y }] of after.places) {
    const was = before.places.get(id);
    const by = was ? Math.hypot(x - was.x, y - was.y) : 0;
    if (by <= MOVED) continue;
    count++;
    if (by <= most) continue;
    most = by;
    farthest = id;
  }
  return { count, most, ...(farthest !== undefined && { farthest }) };
}
