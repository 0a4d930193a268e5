/** Random edits of whatever movement there is: many apply, some are nonsense on purpose. */
import fc from 'fast-check';
import type { Edit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { sampleDocument } from './sampleMovement.ts';

/** The sample with fields that no version knows, at every depth. */
export function documentWithUnknownFields() {
  const document = sampleDocument();
  const mark = (holder: unknown, depth: number): void => {
    if (typeof holder !== 'object' || holder === null) return;
    for (const value of Object.values(holder)) mark(value, depth + 1);
    if (!Array.isArray(holder)) Reflect.set(holder, 'x-own', { depth, list: [1, { deep: true }] });
  };
  mark(document, 0);
  return document;
}

interface Draw {
  readonly kind: string;
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly x: number;
  readonly y: number;
  readonly text: string;
}

const KINDS = [
  'addArbor',
  'addWheel',
  'addRule',
  'addPost',
  'change',
  'changeBadly',
  'remove',
  'removeBearing',
  'move',
  'setValue',
  'setMeasured',
  'useDepth',
  'leaveOut',
  'setCrossing',
  'rename',
  'describe',
  'paste',
  'reorder',
  'setMade',
  'clearMade',
  'accept',
  'withdraw',
  'several',
  'ridesOn',
] as const;

const place = fc.double({ min: -60, max: 60, noNaN: true });

/** Something that becomes an edit once a movement is there. */
export const draws: fc.Arbitrary<Draw> = fc.record({
  kind: fc.constantFrom(...KINDS),
  a: fc.nat(),
  b: fc.nat(),
  c: fc.nat(),
  x: place,
  y: place,
  text: fc.string({ maxLength: 8 }),
});

/** The edit that a draw stands for in this movement. */
export function editOf(movement: Movement, draw: Draw): Edit {
  const { a, b, c, x, y, text } = draw;
  const pick = <T>(list: readonly T[], n: number, otherwise: T): T => list[n % Math.max(1, list.length)] ?? otherwise;
  const points = [...movement.arbors, ...movement.posts, ...movement.marks].map(({ id }): string => id);
  const parts = [
    ...points,
    ...movement.wheels.map(({ id }): string => id),
    ...movement.walls.map(({ id }): string => id),
  ];
  const all = [
    ...parts,
    ...movement.plates.map(({ id }): string => id),
    ...movement.rules.map(({ id }): string => id),
    ...movement.readings.map(({ id }): string => id),
  ];
  const point = (n: number): string => pick(points, n, 'nobody');
  const rule = pick(
    movement.rules.map(({ id }): string => id),
    a,
    'no-rule',
  );
  const fresh = `n${a % 1000}`;
  switch (draw.kind) {
    case 'addArbor':
      return {
        kind: 'add',
        to: 'arbors',
        item: { id: fresh, at: [x, y], 'x-own': text },
        at: b % (movement.arbors.length + 2),
      };
    case 'addWheel':
      return {
        kind: 'add',
        to: 'wheels',
        item: {
          id: fresh,
          arbor: point(b),
          teeth: c % 90,
          size: { module: 0.5 },
          form: 'involute',
          level: y,
          thickness: 2,
        },
      };
    case 'addPost':
      return { kind: 'add', to: 'posts', item: { id: fresh, at: [x, y], diameter: 3, slidesAbout: point(b) } };
    case 'addRule':
      return { kind: 'add', to: 'rules', item: addedRule(fresh, point, b, c, x) };
    case 'change':
      return {
        kind: 'change',
        id: pick(all, a, 'nobody'),
        set: { name: text, note: 'seen' },
        unset: b % 2 === 0 ? ['plusMinus', 'x-own'] : [],
      };
    case 'changeBadly':
      return {
        kind: 'change',
        id: pick(all, a, 'nobody'),
        set: { at: [x], diameter: -1, kind: text, id: text },
        unset: ['id'],
      };
    case 'ridesOn':
      return { kind: 'change', id: point(a), set: { ridesOn: point(b) } };
    case 'remove':
      return { kind: 'remove', ids: [pick(all, a, 'nobody'), ...(c % 3 === 0 ? [pick(all, b, 'nobody')] : [])] };
    case 'removeBearing':
      return { kind: 'removeBearing', arbor: point(a), bearing: b % 3 };
    case 'move':
      return {
        kind: 'move',
        places: [
          { id: point(a), at: [x, y] },
          { id: point(b), at: [c % 5 === 0 ? Number.NaN : y, -0] },
        ],
      };
    case 'setValue':
      return { kind: 'setValue', rule, value: b % 2 === 0 ? x : [x, y] };
    case 'setMeasured':
      return { kind: 'setMeasured', rule, value: x, plusMinus: 0.02 };
    case 'useDepth':
      return { kind: 'useDepth', rule, use: pick(['calculated', 'measured', 'held'] as const, b, 'held') };
    case 'leaveOut':
      return { kind: 'leaveOut', rules: [rule], leaveOut: b % 2 === 0 };
    case 'setCrossing': {
      const crossing = { from: point(b), to: point(c), side: 'left' as const };
      return { kind: 'setCrossing', point: point(a), ...(b % 3 === 0 ? {} : { crossing }) };
    }
    case 'rename':
      return { kind: 'rename', from: pick(all, a, 'nobody'), to: b % 4 === 0 ? point(c) : `${fresh}-new` };
    case 'describe':
      return { kind: 'describe', set: { title: text, 'x-more': [text], limits: { radialGap: x } }, unset: ['x-own'] };
    case 'paste':
      return {
        kind: 'paste',
        parts: {
          arbors: movement.arbors.slice(a % 4, (a % 4) + 2) as never, // parts of the document itself, which satisfy their schema
          wheels: movement.wheels.slice(b % 3, (b % 3) + 1) as never,
          rules: movement.rules.slice(c % 7, (c % 7) + 1) as never,
        },
        by: [x, y],
      };
    case 'reorder':
      return { kind: 'reorder', id: pick(all, a, 'nobody'), to: b % 6 };
    case 'setMade':
      return {
        kind: 'setMade',
        made: { point: point(a), state: b % 2 === 0 ? 'drilled' : 'marked', ...(c % 3 === 0 ? {} : { at: [x, y] }) },
      };
    case 'clearMade':
      return { kind: 'clearMade', point: point(a) };
    case 'accept':
      return {
        kind: 'accept',
        accepted: {
          finding: 'tooClose',
          parts: [pick(parts, a, 'nobody'), pick(parts, b, 'nobody')],
          gap: x,
          reason: text,
        },
      };
    case 'withdraw':
      return { kind: 'withdraw', finding: 'tooClose', parts: movement.accepted[0]?.parts ?? [] };
    default:
      return {
        kind: 'several',
        edits: [
          { kind: 'add', to: 'arbors', item: { id: fresh, at: [x, y] } },
          { kind: 'rename', from: fresh, to: `${fresh}-b` },
          editOf(movement, { ...draw, kind: pick(KINDS.slice(0, -2), c, 'remove') }),
        ],
      };
  }
}

function addedRule(id: string, point: (n: number) => string, b: number, c: number, x: number) {
  const kinds = [
    { id, kind: 'distance' as const, points: [point(b), point(c)] as [string, string], length: x },
    { id, kind: 'bearing' as const, point: point(b), centre: point(c), angle: x },
    { id, kind: 'samePlace' as const, points: [point(b), point(c)] as [string, string] },
    { id, kind: 'opposite' as const, point: point(b), centre: point(c), of: point(b + c) },
    { id, kind: 'sameRadius' as const, points: [point(b), point(b + 1), point(b + 2)], centre: point(c) },
  ];
  return kinds[(b + c) % kinds.length] ?? kinds[0]!; // the list is not empty
}
