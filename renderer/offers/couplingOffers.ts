/** Couplings other than depths in the plane: what could join two chosen parts, and each in words. */

import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit, freshId, idsOf } from '../../solver/movement/index.ts';
import { type Coupling, type Movement, partsOfCoupling } from '../../solver/movement/schema.ts';
import type { Turning } from '../../solver/train/index.ts';
import { divide, multiply, type Rational, rational } from '../../solver/train/turning/rational.ts';
import { periodSays } from '../../solver/words/train/index.ts';
import type { CouplingDraft, CouplingSide, NameOf } from './couplings/couplingWays.ts';
import { ALL_WAYS, waysOf } from './couplings/ways.ts';

/** A coupling that could be added. */
export interface CouplingOffer {
  readonly says: string;
  /** What it would give: "1/60 of a turn, once in 12 min"; nothing to tell of an arm. */
  readonly gives: string;
  readonly edit: Edit;
}

/** "Worm on Crank turns wheel of 60 on Centre". */
export const couplingSays = (coupling: CouplingDraft | Coupling, nameOf: NameOf): string =>
  waysOf(coupling).says(coupling as CouplingDraft, nameOf); // a coupling as read holds all that a draft does

/** Couplings that name the arbor, or a wheel on it, or the wheel. */
export function couplingsOf({ couplings, wheels }: Movement, part: PartId): readonly Coupling[] {
  const own = new Set<string>([part, ...wheels.filter(({ arbor }) => arbor === part).map(({ id }) => id)]);
  return couplings.filter((each) => partsOfCoupling(each).some((id) => own.has(id)));
}

/** All that can join the two parts (arbors or wheels) and is not there yet, either of them driving. */
export function couplingOffers(
  movement: Movement,
  turning: Turning,
  parts: readonly [PartId, PartId],
  nameOf: NameOf,
): readonly CouplingOffer[] {
  const [a, b] = parts.map((part) => sideOf(movement, part));
  if (!a || !b || a.arbor === b.arbor) return [];
  const there = new Set(movement.couplings.map(wordOf));
  const taken = new Set<string>(idsOf(movement).keys());
  return [...drafts(a, b), ...drafts(b, a)].flatMap((draft) => {
    const item = { ...draft, id: freshId(taken, draft.kind) };
    const edit: Edit = waysOf(item).takenIn?.(movement, item) ?? { kind: 'add', to: 'couplings', item };
    if (there.has(wordOf(item)) || applyEdit(movement, edit).kind === 'refused') return [];
    return [{ says: couplingSays(item, nameOf), gives: givesSays(movement, turning, item), edit }];
  });
}

/** Kind and parts: two couplings with one word do the same. A draft names its parts in the same fields as a coupling. */
const wordOf = (coupling: CouplingDraft | Coupling): string =>
  [coupling.kind, ...partsOfCoupling(coupling as Coupling)].join(' ');

function sideOf({ arbors, wheels }: Movement, part: PartId): CouplingSide | undefined {
  const wheel = wheels.find(({ id }) => id === part);
  if (wheel) return { arbor: wheel.arbor, wheels: [wheel.id], isArbor: false };
  if (!arbors.some(({ id }) => id === part)) return undefined;
  return { arbor: part, wheels: wheels.filter(({ arbor }) => arbor === part).map(({ id }) => id), isArbor: true };
}

/** All with `from` driving; the ids are given later. */
const drafts = (from: CouplingSide, to: CouplingSide): readonly CouplingDraft[] => [
  ...ALL_WAYS.flatMap((ways) => ways.ofArbors?.(from, to) ?? []),
  ...to.wheels.flatMap((wheel) => ALL_WAYS.flatMap((ways) => ways.ofWheel?.(from, wheel) ?? [])),
];

function givesSays(movement: Movement, turning: Turning, item: CouplingDraft): string {
  const gives = waysOf(item).gives?.(movement, item);
  if (!gives) return '';
  const { driving, driven, from } = gives;
  const period = periodOf(turning, from);
  const once = period && `, once in ${periodSays(multiply(period, rational(BigInt(driven), BigInt(driving))), 6)}`;
  return `${driving}/${driven} of a turn${once ?? ''}`;
}

/** Exact seconds of one turn, where the arbor turns. */
function periodOf({ arbors, drive }: Turning, id: string | undefined): Rational | undefined {
  const turns = [...arbors.values()].find((arbor) => arbor.id === id)?.rate?.turns;
  if (!turns || turns.n === 0n || !drive) return undefined;
  const seconds = divide(drive.periodSeconds, turns);
  return seconds.n < 0n ? { n: -seconds.n, d: seconds.d } : seconds;
}
