/** Rules offered among chosen points: each could be kept, says whose it is, and has the value that it has now. */
import { describe, expect, test } from 'vitest';
import { keepOffer, offersBetween } from '../../renderer/offers/ruleOffers.ts';
import { shareOffers } from '../../renderer/offers/shareOffer.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import { applyEdit } from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import { movementOfParts } from '../support/movements.ts';

/** Four places at the corners of a square about O, listed out of turn. Our own scenario. */
function movement(): Movement {
  const at = { O: [0, 0], E: [30, 0], W: [-30, 1], N: [0, 30], S: [1, -30] };
  return movementOfParts({
    arbors: Object.entries(at).map(([id, place]) => ({ id, at: place })),
    rules: [{ id: 'o', kind: 'held', point: 'O', at: [0, 0] }],
  });
}

describe('offers among chosen points', () => {
  const placed = plantMovement(movement());
  const among = (...ids: string[]) => offersBetween(placed, ids as PartId[], String); // ids of the movement above

  test('a pair: each may be measured from the other', () => {
    const says = among('O', 'E').map((offer) => offer.says);
    expect(says).toContain('Radius from O');
    expect(says).toContain('O: Radius from E');
    expect(says).toContain('Direction about O');
  });

  test('three: each of them in each part, and each offer can be kept', () => {
    const offers = among('O', 'E', 'W');
    const says = offers.map((offer) => offer.says);
    expect(says).toContain('W: Straight opposite E about O');
    expect(says).toContain('O: In line with E and W');
    expect(says).toContain('W: Direction about O, from E');
    expect(new Set(says).size).toBe(says.length);
    for (const offer of offers) {
      const outcome = applyEdit(placed.movement, { kind: 'several', edits: keepOffer(placed.movement, offer) });
      expect(outcome.kind, offer.says).toBe('edited');
    }
  });

  test('many: evenly spaced in the order in which they stand, which plants with none of them jumping across', () => {
    const offer = among('O', 'W', 'N', 'E', 'S').find(({ rule }) => rule.kind === 'evenSpacing' && rule.centre === 'O');
    expect(offer?.says).toBe('S, E, N, W: Even spacing about O');
    const kept = applyEdit(placed.movement, { kind: 'several', edits: offer ? keepOffer(placed.movement, offer) : [] });
    if (kept.kind === 'refused') throw new Error(JSON.stringify(kept.why));
    const after = plantMovement(kept.movement);
    expect(after.disagreements).toEqual([]);
    for (const place of after.places.values()) {
      const was = placed.places.get(place.id);
      expect(Math.hypot(place.x - (was?.x ?? 0), place.y - (was?.y ?? 0)), place.id).toBeLessThan(2);
    }
  });

  test('a wheel and a wall: a gap, with what it measures now', () => {
    const parts = {
      wheels: [{ id: 'w', arbor: 'E', teeth: 20, size: { module: 1 }, form: 'involute', level: 2, thickness: 2 }],
    };
    const ring = { id: 'wall', outline: { kind: 'circle', centre: [0, 0], radius: 60 }, levels: { from: 0, to: 9 } };
    const inner = { kind: 'circle', centre: [0, 0], radius: 55 };
    const outcome = applyEdit(placed.movement, {
      kind: 'several',
      edits: [
        { kind: 'add', to: 'wheels', item: parts.wheels[0] as never }, // sound items, written above
        { kind: 'add', to: 'walls', item: { ...ring, inner } as never },
      ],
    });
    if (outcome.kind === 'refused') throw new Error(JSON.stringify(outcome.why));
    const offers = offersBetween(plantMovement(outcome.movement), ['w', 'wall'] as PartId[], String);
    expect(offers.map((offer) => offer.says)).toEqual(['Clear of wall']);
    // E stands 30 out; the tips of 20 teeth of module 1 reach 11 (ISO 53): 55 - 30 - 11.
    expect(offers[0]?.value).toEqual({ kind: 'length', value: expect.closeTo(14, 9) });
  });

  test('what is chosen twice over, or has no place, is offered nothing', () => {
    expect(among('O', 'O')).toEqual([]);
    expect(among('O', 'nothing')).toEqual([]);
  });
});

describe('sharing the difference', () => {
  const lengths = (count: number): Movement =>
    movementOfParts({
      arbors: [
        { id: 'A', at: [0, 0] },
        { id: 'B', at: [60, 0] },
        { id: 'C', at: [30, 80] },
        { id: 'P', at: [31, 39] },
      ],
      rules: [
        { id: 'a', kind: 'held', point: 'A', at: [0, 0] },
        { id: 'b', kind: 'held', point: 'B', at: [60, 0] },
        { id: 'c', kind: 'held', point: 'C', at: [30, 80] },
        ...['A', 'B', 'C'].slice(0, count).map((from) => ({
          id: `d${from}`,
          kind: 'distance',
          points: [from, 'P'],
          length: 50.06 - (from === 'C' ? 10 : 0),
        })),
      ],
    });
  const offered = (movement: Movement) => shareOffers(plantMovement(movement), 'P' as PointId, String); // a point above

  test('is offered where more lengths are known than the point needs, and is kept once', () => {
    expect(offered(lengths(2))).toEqual([]);
    const [offer] = offered(lengths(3));
    expect(offer?.says).toBe('Share the difference among 3 lengths');
    const kept = applyEdit(lengths(3), { kind: 'several', edits: offer ? keepOffer(lengths(3), offer) : [] });
    if (kept.kind === 'refused') throw new Error('refused');
    expect(plantMovement(kept.movement).places.get('P' as PointId)?.placedBy).toHaveLength(1); // as above
    expect(offered(kept.movement)).toEqual([]);
  });
});
