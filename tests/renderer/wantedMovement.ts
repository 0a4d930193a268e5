/** A small movement of our own: a driven pinion, a wheel in depth with it, and a third arbor that nothing joins yet. */

import type { Movement } from '../../solver/movement/schema.ts';
import { movementOfParts } from '../support/movements.ts';

const wheel = (id: string, arbor: string, teeth: number) => ({
  id,
  arbor,
  teeth,
  size: { module: 1 },
  form: 'involute',
  level: 0,
  thickness: 2,
});

export function movementOf(): Movement {
  return movementOfParts({
    arbors: [
      { id: 'first', name: 'First', at: [0, 0] },
      { id: 'second', name: 'Second', at: [30, 0] },
      { id: 'third', name: 'Third', at: [0, 60] },
    ],
    wheels: [wheel('leaves', 'first', 20), wheel('teeth', 'second', 40), wheel('crown', 'third', 60)],
    rules: [{ id: 'depth', kind: 'depth', wheels: ['leaves', 'teeth'] }],
    drive: { arbor: 'first', period: { value: 12, unit: 'h' } },
  });
}
