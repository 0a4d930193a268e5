/** What the document asks of one kind of coupling. */
import type { ArborId, PartId, WheelId } from '../ids.ts';

/** Tells what is wrong at a field: keys of its path, what stands there, and what should. */
export type TellCoupling = (keys: readonly (string | number)[], found: string, expected: string) => void;

/** Axes as the checks of a file know them: the representative of an arbor's, and of a wheel's. */
export interface KnownAxes {
  readonly ofArbor: (arbor: string) => string;
  readonly ofWheel: (wheel: string) => string;
}

/** One kind of coupling; `C` is the coupling as read. */
export interface CouplingFacts<Kind extends string, C> {
  readonly kind: Kind;
  /** All parts that it names, in the order of its words. */
  readonly parts: (coupling: C) => readonly PartId[];
  /** Two wheels in mesh, which owe each other no gap. */
  readonly meshes?: (coupling: C) => readonly [WheelId, WheelId];
  /** Reports what contradicts itself. */
  readonly check: (coupling: C, axes: KnownAxes, tell: TellCoupling) => void;
  /** The coupling without parts that go, itself where it names none of them, nothing where it cannot be without. */
  readonly without: (coupling: C, gone: ReadonlySet<string>) => C | undefined;
}

/** An arbor that turns a wheel on another axis: names, checks and removal of the kinds that are no more than that. */
export interface ArborTurnsWheel {
  readonly arbor: ArborId;
  readonly wheel: WheelId;
}

/** The facts that all kinds of an arbor turning a wheel have in common. */
export const arborTurnsWheel = {
  parts: ({ arbor, wheel }: ArborTurnsWheel): readonly PartId[] => [arbor, wheel],
  check: ({ arbor, wheel }: ArborTurnsWheel, { ofArbor, ofWheel }: KnownAxes, tell: TellCoupling): void => {
    if (ofWheel(wheel) === ofArbor(arbor)) {
      tell(['wheel'], `“${wheel}”, on the axis of “${arbor}”`, 'a wheel on another axis');
    }
  },
  without: <C extends ArborTurnsWheel>(coupling: C, gone: ReadonlySet<string>): C | undefined =>
    gone.has(coupling.arbor) || gone.has(coupling.wheel) ? undefined : coupling,
};
