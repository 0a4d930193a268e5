/** An arm that carries arbors round, as the file states it. */
import { z } from 'zod';
import { arborId } from '../ids.ts';
import type { Known } from '../known.ts';
import { common } from './common.ts';
import type { CouplingFacts } from './couplingFacts.ts';

/** An arm on `arm`'s arbor that carries other arbors round with it. */
export const carrierSchema = z.looseObject({
  kind: z.literal('carrier'),
  ...common,
  arm: arborId,
  carries: z.array(arborId).min(1).max(100),
});

/** An arm with what it carries. */
export type Carrier = Known<z.output<typeof carrierSchema>>;

/** What the document knows of arms. */
export const carrierFacts: CouplingFacts<'carrier', Carrier> = {
  kind: 'carrier',
  parts: ({ arm, carries }) => [arm, ...carries],
  check: ({ arm, carries }, { ofArbor }, tell) => {
    carries.forEach((id, i) => {
      if (ofArbor(id) === ofArbor(arm)) {
        tell(['carries', i], `“${id}”, on the axis of the arm`, 'an arbor carried round by the arm');
      }
      if (carries.indexOf(id) < i) tell(['carries', i], `“${id}” a second time`, 'each arbor once');
    });
  },
  without: (coupling, gone) => {
    if (gone.has(coupling.arm)) return undefined;
    const carries = coupling.carries.filter((id) => !gone.has(id));
    if (carries.length === coupling.carries.length) return coupling;
    return carries.length === 0 ? undefined : { ...coupling, carries };
  },
};

/** The arms of a movement. */
export const carriersOf = ({
  couplings,
}: {
  readonly couplings: readonly { readonly kind: string }[];
}): readonly Carrier[] => couplings.filter((coupling): coupling is Carrier => coupling.kind === carrierFacts.kind);
