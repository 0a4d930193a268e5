/** Removal of parts with everything that cannot be without them; what can, stays and forgets them. */
import { castDraft } from 'immer';
import { couplingWithout } from '../couplings/couplings.ts';
import { idsOf } from '../references/idsOf.ts';
import { namedIn } from '../ruleKinds/kind.ts';
import { ruleKindInDocument } from '../ruleKinds/ruleKinds.ts';
import type { Arbor, Movement, Rule } from '../schema.ts';
import { type BearingGone, bearingOf, renumbered } from './bearingsGone.ts';
import type { EditOf } from './edit.ts';
import { nothingCalled } from './items.ts';
import { type EditPlan, recipe } from './recipe.ts';

/** Removes parts with all that cannot be without them. */
export function planRemove(movement: Movement, edit: EditOf<'remove'>): EditPlan {
  const known = idsOf(movement);
  const unknown = edit.ids.find((id) => !known.has(id));
  if (unknown !== undefined) return nothingCalled(unknown);
  return planWithout(movement, edit.ids);
}

/** Removal of whatever is called one of `ids`, and of bearings beside those in plates that go. */
export function planWithout(movement: Movement, ids: readonly string[], isOff: BearingGone = () => false): EditPlan {
  const next = without(movement, new Set(ids), isOff);
  return recipe((draft) => {
    for (const field of PRUNED) if (next[field] !== movement[field]) Reflect.set(draft, field, castDraft(next[field]));
    if (next.drive === undefined) delete draft.drive;
  });
}

const PRUNED = [
  'drilling',
  'arbors',
  'wheels',
  'posts',
  'marks',
  'plates',
  'walls',
  'openings',
  'rules',
  'couplings',
  'indications',
  'readings',
  'made',
  'accepted',
] as const;

/** The movement without the things called `ids`. Each round takes along what hangs on what went in the last. */
function without(movement: Movement, ids: ReadonlySet<string>, isOff: BearingGone): Movement {
  const gone = new Set(ids);
  const isGone: BearingGone = (arbor, index) => has(gone, arbor.bearings[index]?.plate) || isOff(arbor, index);
  for (let before = -1; before !== gone.size; ) {
    before = gone.size;
    for (const wheel of movement.wheels) if (gone.has(wheel.arbor)) gone.add(wheel.id);
    for (const opening of movement.openings) if (gone.has(opening.plate)) gone.add(opening.id);
    // A rule may be named by another.
    for (const rule of movement.rules) if (!gone.has(rule.id) && !ruleWithout(rule, gone)) gone.add(rule.id);
    for (const reading of movement.readings) {
      const bearing = bearingOf(movement, reading);
      if (reading.of.some((id) => gone.has(id)) || (bearing && isGone(...bearing))) gone.add(reading.id);
    }
  }
  const drive = movement.drive === undefined || gone.has(movement.drive.arbor) ? undefined : movement.drive;
  const { drive: _, ...rest } = movement;
  return {
    ...rest,
    ...(drive === undefined ? {} : { drive }),
    drilling: forget(movement.drilling, [['zeroAt', has(gone, movement.drilling.zeroAt)]]),
    arbors: pruned(movement.arbors, (arbor) => (gone.has(arbor.id) ? undefined : arborWithout(arbor, gone, isGone))),
    wheels: pruned(movement.wheels, (wheel) => keep(wheel, !gone.has(wheel.id))),
    posts: pruned(movement.posts, (post) => {
      if (gone.has(post.id)) return undefined;
      return forget(crossingWithout(post, gone), [
        ['plate', has(gone, post.plate)],
        ['slidesAbout', has(gone, post.slidesAbout)],
        ['fixedTo', has(gone, post.fixedTo?.wall)],
      ]);
    }),
    marks: pruned(movement.marks, (mark) => {
      if (gone.has(mark.id)) return undefined;
      return forget(crossingWithout(mark, gone), [['plate', has(gone, mark.plate)]]);
    }),
    plates: pruned(movement.plates, (plate) => keep(plate, !gone.has(plate.id))),
    walls: pruned(movement.walls, (wall) => keep(wall, !gone.has(wall.id))),
    openings: pruned(movement.openings, (opening) => keep(opening, !gone.has(opening.id))),
    rules: pruned(movement.rules, (rule) => (gone.has(rule.id) ? undefined : ruleWithout(rule, gone))),
    couplings: pruned(movement.couplings, (coupling) =>
      gone.has(coupling.id) ? undefined : couplingWithout(coupling, gone),
    ),
    indications: pruned(movement.indications, (shown) => keep(shown, !gone.has(shown.id) && !gone.has(shown.arbor))),
    readings: pruned(movement.readings, (reading) =>
      gone.has(reading.id) ? undefined : renumbered(movement, reading, isGone),
    ),
    made: pruned(movement.made, (made) => {
      if (gone.has(made.point) || has(gone, made.plate)) return undefined;
      const stands = made.stands && pruned(made.stands, (id) => keep(id, !gone.has(id)));
      if (!stands || stands === made.stands) return made;
      return stands.length > 0 ? { ...made, stands } : forget(made, [['stands', true]]);
    }),
    accepted: pruned(movement.accepted, (accepted) => keep(accepted, !accepted.parts.some((id) => gone.has(id)))),
  };
}

type Gone = ReadonlySet<string>;

function has(gone: Gone, id: string | undefined): boolean {
  return id !== undefined && gone.has(id);
}

function keep<T>(item: T, stays: boolean): T | undefined {
  return stays ? item : undefined;
}

/** The list itself where nothing changed. */
function pruned<T>(list: readonly T[], prune: (item: T) => T | undefined): readonly T[] {
  const next = list.map(prune);
  if (next.every((item, index) => item === list[index])) return list;
  return next.filter((item) => item !== undefined);
}

/** The item without the fields that are marked; the item itself where none is. */
function forget<T extends object>(item: T, fields: readonly (readonly [keyof T & string, boolean])[]): T {
  if (!fields.some(([, lost]) => lost)) return item;
  const copy = { ...item };
  for (const [field, lost] of fields) if (lost) delete copy[field];
  return copy;
}

type Crossed = Movement['arbors'][number] | Movement['posts'][number] | Movement['marks'][number];

function crossingWithout<T extends Crossed>(point: T, gone: Gone): T {
  const { crossing } = point;
  return forget<T>(point, [['crossing', has(gone, crossing?.from) || has(gone, crossing?.to)]]);
}

function arborWithout(arbor: Arbor, gone: Gone, isGone: BearingGone): Arbor {
  const bare = has(gone, arbor.ridesOn);
  const next = forget(crossingWithout(arbor, gone), [
    ['ridesOn', bare],
    ['pipeBore', bare],
    ['turns', bare && arbor.turns === 'withArbor'],
  ]);
  const bearings = arbor.bearings.filter((_, index) => !isGone(arbor, index));
  return bearings.length === arbor.bearings.length ? next : { ...next, bearings };
}

/** The rule without what is gone, or nothing where it goes along. */
function ruleWithout(rule: Rule, gone: Gone): Rule | undefined {
  const { names, without: shortened } = ruleKindInDocument(rule.kind);
  if (shortened) return shortened(rule, (id) => has(gone, id));
  return keep(rule, !namedIn(rule, Object.keys(names)).some(({ id }) => gone.has(id)));
}
