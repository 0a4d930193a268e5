/**
 * Contrast of the two looks, from their style sheets.
 * Source: WCAG 2.2, relative luminance and contrast ratio; 1.4.3 asks 4.5:1 for words, 1.4.11 3:1 for lines that mean something.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

function tokensOf(look: string): Map<string, string> {
  const text = readFileSync(new URL(`../../renderer/looks/${look}.css`, import.meta.url), 'utf8');
  return new Map(
    [...text.matchAll(/--([\w-]+):\s*(#[0-9a-f]{6})/g)].map(([, name = '', colour = '']) => [name, colour]),
  );
}

function luminance(colour: string): number {
  const value = Number.parseInt(colour.slice(1), 16);
  const [r = 0, g = 0, b = 0] = [value >> 16, (value >> 8) & 255, value & 255].map((channel) => {
    const c = channel / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: string, b: string): number {
  const [light = 0, dark = 0] = [luminance(a), luminance(b)].sort((x, y) => y - x);
  return (light + 0.05) / (dark + 0.05);
}

describe.each(['paper', 'layoutBlue'])('%s', (look) => {
  const tokens = tokensOf(look);
  const colour = (name: string): string => tokens.get(name) ?? 'missing';

  it('knows what contrast is: black on white is 21:1', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 9);
  });

  it.each(['ink', 'soft', 'chosen', 'scribe-words'])(
    'words in %s can be read on paper, sheet, wash and field',
    (pen) => {
      for (const ground of ['paper', 'sheet', 'chosen-wash', 'field']) {
        expect(contrast(colour(pen), colour(ground)), `${pen} on ${ground}`).toBeGreaterThanOrEqual(4.5);
      }
    },
  );

  it.each(['ink', 'soft', 'chosen-line', 'scribe'])('lines in %s can be seen on the sheet', (pen) => {
    expect(contrast(colour(pen), colour('sheet'))).toBeGreaterThanOrEqual(3);
  });
});
