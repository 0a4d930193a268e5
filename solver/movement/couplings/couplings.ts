/** All kinds of coupling, by name: one that is added here does not compile until every room's table has it. */
import { z } from 'zod';
import type { PartId, WheelId } from '../ids.ts';
import type { Known } from '../known.ts';
import { carrierFacts, carrierSchema } from './carrier.ts';
import { contrateFacts, contrateSchema } from './contrate.ts';
import type { CouplingFacts, KnownAxes, TellCoupling } from './couplingFacts.ts';
import { steppedFacts, steppedSchema } from './stepped.ts';
import { wormFacts, wormSchema } from './worm.ts';

/** A coupling in the file. */
export const coupling = z.discriminatedUnion('kind', [wormSchema, contrateSchema, carrierSchema, steppedSchema]);

/** Couplings other than depths in the plane, as read. */
export type Coupling = Known<z.output<typeof coupling>>;
/** Name of a kind of coupling, as it stands in the file. */
export type CouplingKind = Coupling['kind'];
/** The couplings of one kind. */
export type CouplingOf<Kind extends CouplingKind> = Extract<Coupling, { readonly kind: Kind }>;

/** The kinds by which an arbor turns another: all but those that only carry. */
export type TurningKind = {
  [Kind in CouplingKind]: CouplingOf<Kind> extends { readonly carries: unknown } ? never : Kind;
}[CouplingKind];

/** Every kind; one without its entry here does not compile. */
export const COUPLINGS = {
  worm: wormFacts,
  contrate: contrateFacts,
  carrier: carrierFacts,
  stepped: steppedFacts,
} satisfies {
  readonly [Kind in CouplingKind]: CouplingFacts<Kind, CouplingOf<Kind>>;
};

type AnyFacts = CouplingFacts<CouplingKind, Coupling>;
/** The table pairs every kind with its own fields, which the compiler cannot follow through an index. */
const factsOf = ({ kind }: Coupling): AnyFacts => COUPLINGS[kind] as unknown as AnyFacts;

/** All parts that a coupling names, in the order of its words. */
export const partsOfCoupling = (each: Coupling): readonly PartId[] => factsOf(each).parts(each);

/** The two wheels that a coupling has in mesh, where it has. */
export const meshOfCoupling = (each: Coupling): readonly [WheelId, WheelId] | undefined => factsOf(each).meshes?.(each);

/** Reports what contradicts itself in a coupling. */
export function checkCoupling(each: Coupling, axes: KnownAxes, tell: TellCoupling): void {
  factsOf(each).check(each, axes, tell);
}

/** The coupling without parts that go; nothing where it cannot be without them. */
export const couplingWithout = (each: Coupling, gone: ReadonlySet<string>): Coupling | undefined =>
  factsOf(each).without(each, gone);
