/**
 * Every place in the document where something is named by its id: the one list that the checks, the renaming
 * of ids and the removal of parts go by.
 */
import type { NamingFields } from '../ruleKinds/kind.ts';
import { ruleKindInDocument } from '../ruleKinds/ruleKinds.ts';
import type { Movement } from '../schema.ts';
import { type Collection, PARTS, POINTS, WHEELS } from './collections.ts';

/** One mention of an id in the document, and where the thing it names must stand. */
export interface Reference {
  /** Path in the document. */
  readonly path: readonly (string | number)[];
  /** Id of the thing that holds the reference, where it has one. */
  readonly owner: string | undefined;
  readonly id: string;
  /** The lists in which it may be found. */
  readonly to: readonly Collection[];
}

type Visit = (reference: Reference) => void;

const ARBORS: readonly Collection[] = ['arbors'];
const PLATES: readonly Collection[] = ['plates'];
const WALLS: readonly Collection[] = ['walls'];

const CROSSING: NamingFields = { from: POINTS, to: POINTS };
const COUPLING: NamingFields = { arbor: ARBORS, wheel: WHEELS, wheels: WHEELS, arm: ARBORS, carries: ARBORS };

/** Visits every reference of the document, in the order of the file. */
export function eachReference(movement: Movement, visit: Visit): void {
  each(movement.arbors, 'arbors', (arbor, path) => {
    fields(arbor, { ridesOn: ARBORS }, path, arbor.id, visit);
    if (arbor.crossing) fields(arbor.crossing, CROSSING, [...path, 'crossing'], arbor.id, visit);
    each(arbor.bearings, 'bearings', (bearing, inner) =>
      fields(bearing, { plate: PLATES }, [...path, ...inner], arbor.id, visit),
    );
  });
  each(movement.wheels, 'wheels', (wheel, path) => fields(wheel, { arbor: ARBORS }, path, wheel.id, visit));
  each(movement.posts, 'posts', (post, path) => {
    fields(post, { plate: PLATES, slidesAbout: POINTS }, path, post.id, visit);
    if (post.fixedTo) fields(post.fixedTo, { wall: WALLS }, [...path, 'fixedTo'], post.id, visit);
    if (post.crossing) fields(post.crossing, CROSSING, [...path, 'crossing'], post.id, visit);
  });
  each(movement.marks, 'marks', (mark, path) => {
    fields(mark, { plate: PLATES }, path, mark.id, visit);
    if (mark.crossing) fields(mark.crossing, CROSSING, [...path, 'crossing'], mark.id, visit);
  });
  each(movement.openings, 'openings', (opening, path) => fields(opening, { plate: PLATES }, path, opening.id, visit));
  each(movement.rules, 'rules', (rule, path) => {
    const { names, namesWithin = {} } = ruleKindInDocument(rule.kind);
    fields(rule, names, path, rule.id, visit);
    for (const [field, inner] of Object.entries(namesWithin)) {
      const holder: unknown = Reflect.get(rule, field);
      if (typeof holder === 'object' && holder !== null) fields(holder, inner, [...path, field], rule.id, visit);
    }
  });
  each(movement.couplings, 'couplings', (coupling, path) => fields(coupling, COUPLING, path, coupling.id, visit));
  fields(movement.drilling, { zeroAt: POINTS }, ['drilling'], undefined, visit);
  if (movement.drive) fields(movement.drive, { arbor: ARBORS }, ['drive'], undefined, visit);
  each(movement.indications, 'indications', (shown, path) => fields(shown, { arbor: ARBORS }, path, shown.id, visit));
  each(movement.readings, 'readings', (reading, path) => fields(reading, { of: PARTS }, path, reading.id, visit));
  each(movement.made, 'made', (made, path) =>
    fields(made, { point: POINTS, plate: PLATES, stands: ['rules'] }, path, undefined, visit),
  );
  each(movement.accepted, 'accepted', (accepted, path) => fields(accepted, { parts: PARTS }, path, undefined, visit));
}

function each<T>(list: readonly T[], name: string, visit: (item: T, path: readonly (string | number)[]) => void): void {
  list.forEach((item, index) => {
    visit(item, [name, index]);
  });
}

function fields(
  holder: object,
  known: NamingFields,
  path: readonly (string | number)[],
  owner: string | undefined,
  visit: Visit,
): void {
  for (const [field, to] of Object.entries(known)) {
    const value: unknown = Object.hasOwn(holder, field) ? Reflect.get(holder, field) : undefined;
    if (typeof value === 'string') visit({ path: [...path, field], owner, id: value, to });
    else if (Array.isArray(value)) {
      value.forEach((id: unknown, index) => {
        if (typeof id === 'string') visit({ path: [...path, field, index], owner, id, to });
      });
    }
  }
}
