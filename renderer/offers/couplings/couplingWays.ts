/** What the window asks of one kind of coupling: its words, and how it could join two chosen parts. */
import type { Edit, ItemInput } from '../../../solver/movement/index.ts';
import type { CouplingKind, Movement } from '../../../solver/movement/schema.ts';

/** A coupling that could be added. */
export type CouplingDraft = ItemInput<'couplings'>;
/** The drafts of one kind. */
export type CouplingDraftOf<Kind extends CouplingKind> = Extract<CouplingDraft, { readonly kind: Kind }>;

/** Gives a part's name. */
export type NameOf = (id: string) => string;

/** One of the two chosen parts, as a coupling sees it. */
export interface CouplingSide {
  readonly arbor: string;
  readonly wheels: readonly string[];
  /** An arm carries arbors: chosen wheels mean themselves. */
  readonly isArbor: boolean;
}

/** What a draft would turn, and by how much: `driving` of the teeth of `driven` for each turn of the arbor `from`. */
export interface Gives {
  readonly from: string | undefined;
  readonly driving: number;
  readonly driven: number;
}

/** One kind of coupling. Drafts get their ids later. */
export interface CouplingWays<Kind extends CouplingKind> {
  readonly says: (coupling: CouplingDraftOf<Kind>, nameOf: NameOf) => string;
  /** Drafts between the two arbors themselves. */
  readonly ofArbors?: (from: CouplingSide, to: CouplingSide) => readonly CouplingDraftOf<Kind>[];
  /** Drafts by which `from` turns a wheel of the other side. */
  readonly ofWheel?: (from: CouplingSide, wheel: string) => readonly CouplingDraftOf<Kind>[];
  /** Another edit than adding it, where one that is there takes it in. */
  readonly takenIn?: (movement: Movement, draft: CouplingDraftOf<Kind>) => Edit | undefined;
  readonly gives?: (movement: Movement, draft: CouplingDraftOf<Kind>) => Gives;
}

/** Id of what has none yet. */
export const DRAFT = 'draft';

/** Teeth of a wheel of the movement. */
export const teethOf = ({ wheels }: Movement, id: string): number =>
  wheels.find((wheel) => wheel.id === id)?.teeth ?? 1;
