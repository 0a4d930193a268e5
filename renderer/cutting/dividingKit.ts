/** What the maker divides with, as he types it: ratios of his heads, circles of his plates, his change wheels. Kept on this computer. */
import { type DividingKit, USUAL_KIT } from '../../solver/teeth/cutting/index.ts';
import { keepHere, keptValue } from '../shell/keptHere.ts';

/** As typed. Numbers stand apart by spaces or commas, plates by a stroke. */
export interface KitText {
  readonly ratios: string;
  readonly plates: string;
  readonly plain: string;
  readonly wheels: string;
}

export type KitField = keyof KitText;

/** The kit that was typed, or what is wrong with it. */
export type KitReading =
  | { readonly kind: 'kit'; readonly kit: DividingKit }
  | { readonly kind: 'none'; readonly problems: readonly { readonly field: KitField; readonly says: string }[] };

/** Largest circle of holes and ratio of a head that is believed. */
const MOST = 2000;

const platesText = (plates: readonly (readonly number[])[]): string =>
  plates.map((plate) => plate.join(' ')).join(' / ');

export const USUAL_KIT_TEXT: KitText = {
  ratios: USUAL_KIT.heads.map(({ ratio }) => ratio).join(' '),
  plates: platesText(USUAL_KIT.heads[0]?.plates ?? []),
  plain: platesText(USUAL_KIT.plainPlates),
  wheels: USUAL_KIT.changeWheels.join(' '),
};

const NAMES: Readonly<Record<KitField, string>> = {
  ratios: 'Heads',
  plates: 'Plates of the heads',
  plain: 'Plain plates',
  wheels: 'Change wheels',
};

/** The kit that the text means, or every field that cannot be read. */
export function readKit(text: KitText): KitReading {
  const problems: { field: KitField; says: string }[] = [];
  const numbers = (field: KitField, part: string): number[] => {
    const words = part.split(/[\s,;]+/).filter(Boolean);
    const wrong = words.find((word) => !/^\d+$/.test(word) || Number(word) < 1 || Number(word) > MOST);
    if (wrong !== undefined) {
      problems.push({
        field,
        says: `${NAMES[field]}: found "${wrong}", expected whole numbers from 1 to ${MOST}, such as ${USUAL_KIT_TEXT[field] || '60 72 96'}.`,
      });
    }
    return words.map(Number);
  };
  const plates = (field: 'plates' | 'plain'): number[][] =>
    text[field]
      .split('/')
      .map((plate) => numbers(field, plate))
      .filter((plate) => plate.length > 0);
  const onHeads = plates('plates');
  const kit: DividingKit = {
    heads: numbers('ratios', text.ratios).map((ratio) => ({ name: `${ratio}:1`, ratio, plates: onHeads })),
    plainPlates: plates('plain'),
    changeWheels: numbers('wheels', text.wheels),
  };
  return problems.length > 0 ? { kind: 'none', problems } : { kind: 'kit', kit };
}

/** What was kept last, or the usual kit where nothing usable was: it is a start, and nothing of the movement depends on it. */
export function keptKit(): KitText {
  const kept = keptValue('dividingKit');
  if (typeof kept !== 'object' || kept === null) return USUAL_KIT_TEXT;
  const fields = Object.entries(kept).filter(
    ([field, value]: [string, unknown]) => field in USUAL_KIT_TEXT && typeof value === 'string',
  );
  return { ...USUAL_KIT_TEXT, ...Object.fromEntries(fields) };
}

/** Keeps the kit; false where this computer does not let the page keep anything. */
export const keepKit = (text: KitText): boolean => keepHere('dividingKit', text);
