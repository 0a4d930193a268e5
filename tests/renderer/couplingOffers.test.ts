/** Couplings that two chosen parts can have. Ratios follow from the counts: starts or teeth over teeth. */
import { expect, test } from 'vitest';
import { type CouplingOffer, couplingOffers, couplingsOf } from '../../renderer/offers/couplingOffers.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { movementOf } from './wantedMovement.ts';

const nameOf = (id: string): string => id;
const part = (id: string): PartId => id as PartId; // ids of the scene

const offers = (movement: Movement, a: string, b: string): readonly CouplingOffer[] =>
  couplingOffers(movement, turnMovement(movement), [part(a), part(b)], nameOf);

function taken(movement: Movement, offer: CouplingOffer | undefined): Movement {
  const outcome = offer ? applyEdit(movement, offer.edit) : undefined;
  if (outcome?.kind !== 'edited') throw new Error(outcome ? JSON.stringify(outcome.why) : 'no such offer');
  return outcome.movement;
}

test('two arbors: worm, contrate, pin and arm either way, each with what it gives; and it does turn so', () => {
  const movement = movementOf();
  const all = offers(movement, 'second', 'third');
  expect(all.map(({ says, gives }) => `${says}: ${gives}`)).toEqual([
    'Arm on second carries third: ',
    'Worm on second turns crown: 1/60 of a turn, once in 60 d',
    'Contrate: teeth turns crown: 40/60 of a turn, once in 1.5 d',
    'Pin or finger on second moves crown: 1/60 of a turn, once in 60 d',
    'Arm on third carries second: ',
    'Worm on third turns teeth: 1/40 of a turn',
    'Contrate: crown turns teeth: 60/40 of a turn',
    'Pin or finger on third moves teeth: 1/40 of a turn',
  ]);
  const worm = taken(movement, all[1]);
  const rate = [...turnMovement(worm).arbors.values()].find(({ id }) => id === 'third')?.rate;
  expect(rate?.periodSeconds).toBe(60 * 86_400);
  expect(couplingsOf(worm, part('third')).map(({ kind }) => kind)).toEqual(['worm']);
  expect(couplingsOf(worm, part('crown'))).toHaveLength(1);
  expect(couplingsOf(worm, part('leaves'))).toHaveLength(0);
  expect(offers(worm, 'second', 'third').map(({ says }) => says)).not.toContain('Worm on second turns crown');
});

test('wheels mean themselves; an arm takes a further arbor along; one axis has nothing to offer', () => {
  const movement = movementOf();
  expect(offers(movement, 'leaves', 'crown').some(({ says }) => says.startsWith('Arm'))).toBe(false);
  expect(offers(movement, 'leaves', 'first')).toEqual([]);
  const once = taken(movement, offers(movement, 'first', 'third')[0]);
  const twice = taken(once, offers(once, 'first', 'second')[0]);
  expect(twice.couplings).toMatchObject([{ kind: 'carrier', arm: 'first', carries: ['third', 'second'] }]);
});
