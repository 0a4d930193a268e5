/** What is kept in this browser: one helper, which forgets where nothing can be kept, and takes nothing spoilt for a value. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { keptKit } from '../../renderer/cutting/dividingKit.ts';
import { keepHere, keptHere, keptValue } from '../../renderer/shell/keptHere.ts';

const RENDERER = resolve(import.meta.dirname, '../../renderer');

/** A storage of this browser; `full` refuses whatever is to be kept. */
function storage(full = false): Map<string, string> {
  const kept = new Map<string, string>();
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, text: string) => {
      if (full) throw new Error('QuotaExceededError');
      kept.set(key, text);
    },
  });
  return kept;
}

afterEach(() => {
  vi.unstubAllGlobals();
});

describe('what is kept in this browser', () => {
  it('comes back as it was kept, texts as texts and values as values', () => {
    storage();
    expect(keepHere('maker', 'Ada')).toBe(true);
    expect(keptHere('maker')).toBe('Ada');
    expect(keepHere('printing', { paper: 'A3', overlap: 12 })).toBe(true);
    expect(keptValue('printing')).toEqual({ paper: 'A3', overlap: 12 });
    expect(keptHere('tools')).toBeUndefined();
  });

  it('is nothing where storage is switched off, and keeping says so', () => {
    vi.stubGlobal('localStorage', {
      get getItem() {
        throw new Error('SecurityError');
      },
      get setItem() {
        throw new Error('SecurityError');
      },
    });
    expect(keptHere('maker')).toBeUndefined();
    expect(keptValue('tools')).toBeUndefined();
    expect(keepHere('maker', 'Ada')).toBe(false);
  });

  it('says that a full storage keeps nothing', () => {
    const kept = storage(true);
    expect(keepHere('maker', 'Ada')).toBe(false);
    expect(kept.size).toBe(0);
  });

  it('takes nothing spoilt for a value', () => {
    storage();
    keepHere('dividingKit', '{"ratios": 7, "wheels": "20, 30"');
    expect(keptValue('dividingKit')).toBeUndefined();
    const usual = keptKit();
    keepHere('dividingKit', { ratios: 7, wheels: '20, 30', unknown: 'x' });
    expect(keptKit()).toEqual({ ...usual, wheels: '20, 30' });
  });

  it('goes through one file', () => {
    const others = readdirSync(RENDERER, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.(svelte|ts)$/.test(file) && /localStorage/.test(readFileSync(join(RENDERER, file), 'utf8')))
      .map((file) => file.replaceAll('\\', '/'));
    expect(others).toEqual(['shell/keptHere.ts']);
  });
});
