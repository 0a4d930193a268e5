/** Couplings other than depths in the plane: what could join two chosen parts, and each in words. */

import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit, type Edit, freshId, type ItemInput, idsOf } from '../../solver/movement/index.ts';
import type { Coupling, Movement } from '../../solver/movement/schema.ts';
import type { Turning } from '../../solver/train/index.ts';
import { divide, multiply, type Rational, rational } from '../../solver/train/turning/rational.ts';
import { periodSays } from '../../solver/words/train/index.ts';

type Draft = ItemInput<'couplings'>;
type NameOf = (id: string) => string;

/** A coupling that could be added. */
export interface CouplingOffer {
  readonly says: string;
  /** What it would give: "1/60 of a turn, once in 12 min"; nothing to tell of an arm. */
  readonly gives: string;
  readonly edit: Edit;
}

const KINDS: Readonly<Record<Coupling['kind'], string>> = {
  worm: 'Worm',
  contrate: 'Contrate',
  carrier: 'Arm',
  stepped: 'Pin or finger',
};

/** "Worm on Crank turns wheel of 60 on Centre". */
export function couplingSays(coupling: Draft | Coupling, nameOf: NameOf): string {
  switch (coupling.kind) {
    case 'worm':
      return `${KINDS.worm} on ${nameOf(coupling.arbor)} turns ${nameOf(coupling.wheel)}`;
    case 'contrate':
      return `${KINDS.contrate}: ${nameOf(coupling.wheels[0])} turns ${nameOf(coupling.wheels[1])}`;
    case 'carrier':
      return `${KINDS.carrier} on ${nameOf(coupling.arm)} carries ${coupling.carries.map(nameOf).join(', ')}`;
    case 'stepped':
      return `${KINDS.stepped} on ${nameOf(coupling.arbor)} moves ${nameOf(coupling.wheel)}`;
  }
}

/** Couplings that name the arbor, or a wheel on it, or the wheel. */
export function couplingsOf({ couplings, wheels }: Movement, part: PartId): readonly Coupling[] {
  const own = new Set<string>([part, ...wheels.filter(({ arbor }) => arbor === part).map(({ id }) => id)]);
  return couplings.filter((each) => partsOf(each).some((id) => own.has(id)));
}

function partsOf(coupling: Draft | Coupling): readonly string[] {
  if (coupling.kind === 'contrate') return coupling.wheels;
  return coupling.kind === 'carrier' ? [coupling.arm, ...coupling.carries] : [coupling.arbor, coupling.wheel];
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
    const edit: Edit = withArm(movement, item) ?? { kind: 'add', to: 'couplings', item };
    if (there.has(wordOf(item)) || applyEdit(movement, edit).kind === 'refused') return [];
    return [{ says: couplingSays(item, nameOf), gives: gives(movement, turning, item), edit }];
  });
}

/** Kind and parts: two couplings with one word do the same. */
const wordOf = (coupling: Draft | Coupling): string => [coupling.kind, ...partsOf(coupling)].join(' ');

/** One of the two chosen parts, as a coupling sees it. */
interface Side {
  readonly arbor: string;
  readonly wheels: readonly string[];
  /** An arm carries arbors: chosen wheels mean themselves. */
  readonly isArbor: boolean;
}

function sideOf({ arbors, wheels }: Movement, part: PartId): Side | undefined {
  const wheel = wheels.find(({ id }) => id === part);
  if (wheel) return { arbor: wheel.arbor, wheels: [wheel.id], isArbor: false };
  if (!arbors.some(({ id }) => id === part)) return undefined;
  return { arbor: part, wheels: wheels.filter(({ arbor }) => arbor === part).map(({ id }) => id), isArbor: true };
}

/** All with `from` driving; the ids are given later. */
function drafts(from: Side, to: Side): Draft[] {
  const id = 'draft';
  return [
    ...(from.isArbor && to.isArbor ? [{ id, kind: 'carrier' as const, arm: from.arbor, carries: [to.arbor] }] : []),
    ...to.wheels.flatMap((wheel): Draft[] => [
      { id, kind: 'worm', arbor: from.arbor, starts: 1, wheel },
      ...from.wheels.map((own): Draft => ({ id, kind: 'contrate', wheels: [own, wheel] })),
      { id, kind: 'stepped', arbor: from.arbor, wheel, teeth: 1 },
    ]),
  ];
}

/** An arm that carries something already takes the new arbor along. */
function withArm({ couplings }: Movement, item: Draft): Edit | undefined {
  if (item.kind !== 'carrier') return undefined;
  const arm = couplings.find((each) => each.kind === 'carrier' && each.arm === item.arm);
  if (arm?.kind !== 'carrier') return undefined;
  return { kind: 'change', id: arm.id, set: { carries: [...arm.carries, ...item.carries] } };
}

function gives({ wheels }: Movement, turning: Turning, item: Draft): string {
  if (item.kind === 'carrier') return '';
  const teethOf = (id: string): number => wheels.find((wheel) => wheel.id === id)?.teeth ?? 1;
  const [driving, driven] =
    item.kind === 'contrate'
      ? [teethOf(item.wheels[0]), teethOf(item.wheels[1])]
      : [item.kind === 'worm' ? item.starts : (item.teeth ?? 1), teethOf(item.wheel)];
  const from =
    item.kind === 'contrate' ? wheels.find(({ id }) => id === item.wheels[0])?.arbor : (item.arbor as PartId); // ids of the movement itself
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
