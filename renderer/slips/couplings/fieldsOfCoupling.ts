/** What a slip shows of each kind of coupling. */
import type { Component } from 'svelte';
import type { Coupling, CouplingKind, CouplingOf } from '../../../solver/movement/schema.ts';
import CarrierFields from './CarrierFields.svelte';
import ContrateFields from './ContrateFields.svelte';
import SteppedFields from './SteppedFields.svelte';
import type { SetField } from './setField.ts';
import WormFields from './WormFields.svelte';

/** Every kind; one without its entry here does not compile. */
const FIELDS: {
  readonly [Kind in CouplingKind]: Component<{ coupling: CouplingOf<Kind>; set: SetField }>;
} = { worm: WormFields, contrate: ContrateFields, stepped: SteppedFields, carrier: CarrierFields };

/** The component that shows a coupling's own numbers. */
export const fieldsOfCoupling = ({ kind }: Coupling): Component<{ coupling: Coupling; set: SetField }> =>
  // The table pairs every kind with its own fields, which the compiler cannot follow through an index.
  FIELDS[kind] as unknown as Component<{ coupling: Coupling; set: SetField }>;
