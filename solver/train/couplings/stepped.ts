/** Pins and fingers, as they move their wheels. */
import type { CouplingOf } from '../../movement/schema.ts';
import type { Join } from './join.ts';

/** A finger acts as a wheel of which only a few teeth are left. */
export const steppedJoins = ({ kind, arbor, wheel, teeth }: CouplingOf<'stepped'>): Join => ({
  kind,
  by: 'arbor',
  arbor,
  wheel,
  teeth,
  senseOn: ({ internal }) => (internal ? 1 : -1),
});
