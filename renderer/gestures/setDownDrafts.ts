/**
 * What can be set down, the numbers it asks for, and the edits that add it. One description serves the pointer, the
 * form on the right and the keys.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { type Edit, freshId, type ItemInput, idsOf } from '../../solver/movement/index.ts';
import { FORMS, type Movement } from '../../solver/movement/schema.ts';
import { FORM_CHOICES } from '../../solver/words/index.ts';
import type { DownKind, SetDownDraft } from '../state/underWay.ts';

export const DOWN_KINDS = {
  wheel: 'Wheel',
  arbor: 'Arbor',
  pipe: 'Pipe on an arbor',
  post: 'Post',
  mark: 'Mark',
  plate: 'Plate',
  wall: 'Wall',
  opening: 'Opening',
} as const satisfies Record<DownKind, string>;

export type FieldKind = 'length' | 'height' | 'count' | 'words' | 'choice';
/** A number or a choice that is asked for before something is set down. */
export interface Field {
  readonly name: string;
  readonly says: string;
  readonly kind: FieldKind;
  readonly choices?: readonly { readonly value: string; readonly says: string }[];
}

const name: Field = { name: 'name', says: 'Name', kind: 'words' };
const diameter: Field = { name: 'diameter', says: 'Diameter', kind: 'length' };
const outline: readonly Field[] = [
  {
    name: 'outline',
    says: 'Outline',
    kind: 'choice',
    choices: [
      { value: 'round', says: 'round' },
      { value: 'square', says: 'four straight sides' },
    ],
  },
  { name: 'across', says: 'Diameter, or width', kind: 'length' },
  { name: 'up', says: 'Height (straight sides)', kind: 'length' },
];
const levels: readonly Field[] = [
  { name: 'from', says: 'From height', kind: 'height' },
  { name: 'to', says: 'To height', kind: 'height' },
];

export const FIELDS: Readonly<Record<DownKind, readonly Field[]>> = {
  wheel: [
    name,
    { name: 'teeth', says: 'Teeth', kind: 'count' },
    { name: 'module', says: 'Module', kind: 'length' },
    {
      name: 'form',
      says: 'Form',
      kind: 'choice',
      choices: FORM_CHOICES,
    },
    { name: 'level', says: 'Lower face at height', kind: 'height' },
    { name: 'thickness', says: 'Thickness', kind: 'length' },
  ],
  arbor: [name, diameter],
  pipe: [name, diameter, { name: 'pipeBore', says: 'Bore', kind: 'length' }],
  post: [name, diameter, ...levels],
  mark: [name],
  plate: [name, ...outline, ...levels],
  wall: [name, ...outline, { name: 'thickness', says: 'Wall thickness', kind: 'length' }, ...levels],
  opening: [name, ...outline],
};

/** First values: like the last wheel or plate of the movement, else small ordinary ones (our own choice). */
export function firstDraft(kind: DownKind, movement: Movement): SetDownDraft {
  const wheel = movement.wheels.at(-1);
  const base = movement.plates[0];
  const top = Math.max(10, ...movement.wheels.map(({ level, thickness }) => level + thickness + 2));
  switch (kind) {
    case 'wheel':
      return {
        name: '',
        teeth: 60,
        module: wheel && 'module' in wheel.size ? wheel.size.module : 1,
        form: wheel?.form ?? FORMS.involute.name,
        level: wheel?.level ?? 2,
        thickness: wheel?.thickness ?? 2,
      };
    case 'arbor':
      return { name: '', diameter: 3 };
    case 'pipe':
      return { name: '', diameter: 5, pipeBore: 3.05 };
    case 'post':
      return { name: '', diameter: 8, from: 0, to: top };
    case 'mark':
      return { name: '' };
    case 'plate':
      return { name: base ? '' : 'Base plate', outline: 'round', across: 150, up: 100, from: -2, to: 0 };
    case 'wall':
      return { name: '', outline: 'round', across: 150, up: 100, thickness: 3, from: 0, to: top };
    case 'opening':
      return { name: '', outline: 'round', across: 20, up: 20 };
  }
}

/** What setting down adds, and which point it gives (none for parts of the case). */
export interface SetDown {
  readonly edits: readonly Edit[];
  readonly point?: PointId;
  readonly part: string;
  readonly says: string;
}

/** Why something cannot be set down here. */
export interface CannotSetDown {
  readonly cannot: string;
}

/**
 * The edits that set a draft down.
 *
 * @param on the arbor under the pointer, which a wheel or a pipe goes onto
 */
export function setDown(
  kind: DownKind,
  draft: SetDownDraft,
  at: Point,
  on: string | undefined,
  movement: Movement,
): SetDown | CannotSetDown {
  const taken = idsOf(movement);
  const words = String(draft['name'] ?? '').trim();
  const known = (stem: string): { id: string; name: string } => {
    const id = freshId(taken, words || stem);
    return { id, name: words || nameFrom(id) };
  };
  const place: [number, number] = [at.x, at.y];
  switch (kind) {
    case 'wheel':
      return wheelDown(draft, place, on, movement);
    case 'arbor': {
      const item = { ...known('arbor'), at: place, diameter: number(draft, 'diameter') };
      return added('arbors', item, item.id);
    }
    case 'pipe': {
      if (!on) return { cannot: 'A pipe rides on an arbor: point at the arbor that it goes onto.' };
      const item = {
        ...known('pipe'),
        at: place,
        diameter: number(draft, 'diameter'),
        ridesOn: on,
        pipeBore: number(draft, 'pipeBore'),
      };
      return added('arbors', item, item.id);
    }
    case 'post': {
      const item = {
        ...known('post'),
        at: place,
        diameter: number(draft, 'diameter'),
        levels: levelsOf(draft),
      };
      return added('posts', item, item.id);
    }
    case 'mark': {
      const item = { ...known('mark'), at: place };
      return added('marks', item, item.id);
    }
    case 'plate': {
      const item = { ...known('plate'), outline: outlineOf(draft, at), levels: levelsOf(draft) };
      return added('plates', item);
    }
    case 'wall': {
      const item = {
        ...known('wall'),
        outline: outlineOf(draft, at),
        inner: outlineOf(draft, at, number(draft, 'thickness')),
        levels: levelsOf(draft),
      };
      return added('walls', item);
    }
    case 'opening': {
      const plate = movement.plates[0];
      if (!plate) return { cannot: 'An opening is cut in a plate: set down a plate first.' };
      const item = { ...known('opening'), plate: plate.id, outline: outlineOf(draft, at) };
      return added('openings', item);
    }
  }
}

/** What something is called that was given no name: "Arbor 2" for arbor-2. */
const nameFrom = (id: string): string => `${id.charAt(0).toUpperCase()}${id.slice(1).replaceAll('-', ' ')}`;

/** A wheel goes onto the arbor under the pointer, or brings its own. */
function wheelDown(draft: SetDownDraft, at: [number, number], on: string | undefined, movement: Movement): SetDown {
  const taken = new Set<string>(idsOf(movement).keys());
  const words = String(draft['name'] ?? '').trim();
  const edits: Edit[] = [];
  let arbor = on;
  if (!arbor) {
    arbor = freshId(taken, words ? `${words} arbor` : 'arbor');
    taken.add(arbor);
    edits.push({ kind: 'add', to: 'arbors', item: { id: arbor, name: words || nameFrom(arbor), at, diameter: 3 } });
  }
  const teeth = number(draft, 'teeth');
  const id = freshId(taken, words ? `${words} wheel` : teeth <= 16 ? 'pinion' : 'wheel');
  edits.push({
    kind: 'add',
    to: 'wheels',
    item: {
      id,
      ...(words && on ? { name: words } : {}),
      arbor,
      teeth,
      size: { module: number(draft, 'module') },
      form: String(draft['form']) as ItemInput<'wheels'>['form'], // the form's choices are these words
      level: number(draft, 'level'),
      thickness: number(draft, 'thickness'),
    },
  });
  const point = on ? {} : { point: arbor as PointId }; // the arbor that this edit adds
  return { edits, part: on ? id : arbor, says: `set down ${words || nameFrom(id)}`, ...point };
}

function added(
  to: 'arbors' | 'posts' | 'marks' | 'plates' | 'walls' | 'openings',
  item: { readonly id: string; readonly name?: string },
  point?: string,
): SetDown {
  const edit = { kind: 'add', to, item } as Edit; // `item` was made for the list `to` by the caller above
  return {
    edits: [edit],
    part: item.id,
    says: `set down ${item.name ?? item.id}`,
    ...(point === undefined ? {} : { point: point as PointId }), // the point that this edit adds
  };
}

const number = (draft: SetDownDraft, field: string): number => Number(draft[field]);
const levelsOf = (draft: SetDownDraft): { from: number; to: number } => ({
  from: number(draft, 'from'),
  to: number(draft, 'to'),
});

/** A round or four-sided outline about a place, `inset` mm inside its stated size. */
function outlineOf(draft: SetDownDraft, { x, y }: Point, inset = 0): ItemInput<'plates'>['outline'] {
  const across = number(draft, 'across') / 2 - inset;
  if (draft['outline'] === 'round') return { kind: 'circle', centre: [x, y], radius: across };
  const up = number(draft, 'up') / 2 - inset;
  return {
    kind: 'path',
    vertices: [
      { x: x - across, y: y - up },
      { x: x + across, y: y - up },
      { x: x + across, y: y + up },
      { x: x - across, y: y + up },
    ],
  };
}
