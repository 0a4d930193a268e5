/**
 * The movement document, version 2: the whole mechanism with its case, as it stands in the file.
 *
 * One zod schema gives the types, the defaults and the JSON Schema that ships with the app. Lengths are
 * millimetres and angles degrees, x to the right and y up, seen from the marked face. Objects are loose:
 * fields that this version does not know are kept on save.
 */
import { z } from 'zod';
import { opening, plate, wall } from './case.ts';
import { centreLine } from './centreLine.ts';
import { constant } from './constant.ts';
import { coupling } from './couplings/couplings.ts';
import { cures } from './cures.ts';
import { drilling } from './drilling.ts';
import { partId } from './ids.ts';
import type { Known } from './known.ts';
import { arbor, made, mark, post } from './points.ts';
import { coordinate, extent, MAX_ARBORS, name, note, plusMinus } from './quantities.ts';
import { reading } from './reading.ts';
import { rule } from './rule.ts';
import { toothTable } from './toothTable.ts';
import { drive, indication } from './turning.ts';
import { wheel } from './wheel.ts';

export { carriersOf } from './couplings/carrier.ts';
export {
  COUPLINGS,
  type Coupling,
  type CouplingKind,
  type CouplingOf,
  meshOfCoupling,
  partsOfCoupling,
  type TurningKind,
} from './couplings/couplings.ts';
export { FORM_NAMES, FORMS, type Form, isOfPins } from './forms/forms.ts';

export const FORMAT = 'depthwright-movement';
export const VERSION = 2;

const display = z.looseObject({
  unit: z.enum(['mm', 'inch']).default('mm'),
  decimals: z.int().min(0).max(6).default(3),
});

/** Kinds of bodies that a limit can be stated for; `hand` is whatever sweeps a ring: hands, arms, fingers and pins. */
export const BODY_KINDS = ['wheel', 'hub', 'collar', 'arbor', 'hand', 'post', 'wall', 'plate'] as const;
const bodyKind = z.enum(BODY_KINDS);

/** Smallest gaps that checks accept, mm. */
const limits = z.looseObject({
  radialGap: extent.default(0.5),
  heightGap: extent.default(0.3),
  wallGap: extent.default(0.5),
  /** Other gaps for pairs of these kinds; a gap that is left out stays as above, and the first pair that fits counts. */
  pairs: z
    .array(
      z.looseObject({
        between: z.tuple([bodyKind, bodyKind]),
        plan: extent.exactOptional(),
        height: extent.exactOptional(),
      }),
    )
    .max(36)
    .exactOptional(),
});

/** ± of what stacks are made of, mm: each turned length, and the distance of the plates. Working assumptions. */
const stackTolerance = z.looseObject({ piece: plusMinus.default(0.02), plates: plusMinus.default(0.05) });

export const accepted = z.looseObject({
  /** Kind of the finding and the parts it names, as the check reports them. */
  finding: z.string().max(200),
  parts: z.array(partId).max(10),
  /** Gap when it was accepted, mm: the finding returns when the gap changes. */
  gap: coordinate,
  reason: z.string().min(1).max(2000),
});

const many = <T extends z.ZodType>(item: T, max = 100_000) => z.array(item).max(max).default([]);

export const movementSchema = z.looseObject({
  format: z.literal(FORMAT),
  version: z.literal(VERSION),
  title: name.default('Untitled movement'),
  note: note.exactOptional(),
  revision: z.string().max(40).default('A'),
  date: z.iso.date().exactOptional(),
  display: display.prefault({}),
  limits: limits.prefault({}),
  cures: cures.prefault({}),
  stackTolerance: stackTolerance.prefault({}),
  drilling: drilling.prefault({}),
  /** What straight above, same height and mirrored are told from. */
  centreLine: centreLine.exactOptional(),
  arbors: z.array(arbor).max(MAX_ARBORS).default([]),
  wheels: many(wheel),
  /** Own tooth proportions, named by `wheels[].table`. */
  toothTables: z.array(toothTable).max(1000).exactOptional(),
  /** Own periods, beside the shipped ones. */
  constants: z.array(constant).max(1000).exactOptional(),
  posts: many(post),
  marks: many(mark),
  plates: many(plate, 100),
  walls: many(wall, 1000),
  openings: many(opening, 10_000),
  rules: many(rule),
  couplings: many(coupling),
  drive: drive.exactOptional(),
  indications: many(indication),
  readings: many(reading),
  made: many(made),
  accepted: many(accepted),
});

export type Movement = Known<z.output<typeof movementSchema>>;
export type BodyKind = (typeof BODY_KINDS)[number];
export type Arbor = Movement['arbors'][number];
export type Wheel = Movement['wheels'][number];
export type Post = Movement['posts'][number];
export type Mark = Movement['marks'][number];
export type Plate = Movement['plates'][number];
export type Wall = Movement['walls'][number];
export type Opening = Movement['openings'][number];
export type Rule = Movement['rules'][number];
/** What a rule can be. */
export type KindOfRule = Rule['kind'];
/** The rules of one kind. */
export type RuleOf<Kind extends KindOfRule> = Extract<Rule, { readonly kind: Kind }>;
export type Outline = Plate['outline'];
export type Drilling = Movement['drilling'];
export type Reading = Movement['readings'][number];
export type Made = Movement['made'][number];
export type Cures = Movement['cures'];
export type OwnConstant = NonNullable<Movement['constants']>[number];
