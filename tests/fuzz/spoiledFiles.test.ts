/** A short run of the fuzz: whatever a file holds is refused with words or taken through everything. */
import { describe, expect, it } from 'vitest';
import { mutated } from './mutate.ts';
import { sourceTexts } from './sourceTexts.ts';
import { tryFile } from './tryFile.ts';

const texts = sourceTexts();
const zero = (): number => 0;

describe('spoiled files', () => {
  it('are refused with words, or planted, checked, marked out and written without a fault', () => {
    const kinds = { refused: 0, read: 0 };
    for (let number = 0; number < 50; number++) {
      const text = mutated(texts[number % texts.length] ?? '', number);
      const { kind, fault } = tryFile(text, zero);
      expect(fault, `number ${number}: npm run fuzz -- --file ${number} writes it`).toBeUndefined();
      kinds[kind]++;
    }
    // Both ways are tried: a fuzz whose files are all refused tells nothing of what lies behind the reader.
    expect(Math.min(kinds.refused, kinds.read)).toBeGreaterThan(8);
  });

  it('the same number spoils the same way', () => {
    expect(mutated(texts[0] ?? '', 5)).toBe(mutated(texts[0] ?? '', 5));
    expect(mutated(texts[0] ?? '', 5)).not.toBe(mutated(texts[0] ?? '', 6));
  });
});
