/** The catalogue of movements that can be built and that cannot. */
import { describe, expect, it } from 'vitest';
import { seeded } from '../planting/scenes/random.ts';
import { FAULTY } from './catalogue/faulty.ts';
import { judgeCatalogue } from './catalogue/judge.ts';
import { SOUND } from './catalogue/sound.ts';

describe('the catalogue', () => {
  it('has thirty movements of each sort, each with a name of its own', () => {
    expect(SOUND.length).toBeGreaterThanOrEqual(30);
    expect(FAULTY.length).toBeGreaterThanOrEqual(30);
    expect(new Set([...SOUND, ...FAULTY].map(({ name }) => name)).size).toBe(SOUND.length + FAULTY.length);
  });

  it('every fault is named and nothing is told of sound ones, as written and varied', () => {
    const wrong = judgeCatalogue(seeded(1), 2).filter(({ isRight }) => !isRight);
    expect(wrong.map(({ name, isVaried, found }) => ({ name, isVaried, found }))).toEqual([]);
  });
});
