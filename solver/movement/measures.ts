/**
 * Lengths and angles as people write them, and as they are shown.
 *
 * A length is a sum of terms, each a decimal (point or comma), a fraction or a whole number with a fraction, and a
 * unit or none: `12.5`, `12,5 mm`, `3 5/8 in`, `0.4921"`, `12 + 0.35`, `1.2 cm`, `5 thou`. An angle is in degrees,
 * degrees with minutes and seconds, radians or turns.
 */
import { MAX_LENGTH } from './quantities.ts';

export type LengthUnit = 'mm' | 'inch';

/** A length that was typed, mm, or what is wrong with it. */
export type ParsedLength =
  | { readonly kind: 'length'; readonly mm: number }
  | { readonly kind: 'problem'; readonly problem: MeasureProblem };
/** An angle that was typed, degrees, or what is wrong with it. */
export type ParsedAngle =
  | { readonly kind: 'angle'; readonly deg: number }
  | { readonly kind: 'problem'; readonly problem: MeasureProblem };

/** What is wrong with a measure that was typed; `text` is the piece of it that could not be read. */
export type MeasureProblem = Fault & { readonly of: 'length' | 'angle' };
/** What is wrong, before it is said of what. */
type Fault =
  | { readonly kind: 'nothing' | 'someWithoutUnit' | 'tooLong' | 'tooManyTurns' | 'endsEarly' }
  | { readonly kind: 'notUnderstood' | 'noNumber' | 'notFinite' | 'unknownUnit'; readonly text: string };

/** One inch, mm, exactly. Source: international yard and pound agreement of 1959. */
export const MM_PER_INCH = 25.4;

/** Names of units of length, in mm. A thou is a thousandth of an inch. */
const LENGTH_UNITS: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  m: 1000,
  µm: 0.001,
  um: 0.001,
  in: MM_PER_INCH,
  inch: MM_PER_INCH,
  inches: MM_PER_INCH,
  '"': MM_PER_INCH,
  thou: MM_PER_INCH / 1000,
};

const ANGLE_UNITS: Readonly<Record<string, number>> = {
  '°': 1,
  deg: 1,
  degrees: 1,
  "'": 1 / 60,
  '"': 1 / 3600,
  rad: 180 / Math.PI,
  turn: 360,
  turns: 360,
};

/** A length in mm from what was typed; a bare number is in `unit`. */
export function parseLength(text: string, unit: LengthUnit = 'mm'): ParsedLength {
  const terms = termsOf(text, LENGTH_UNITS);
  if ('kind' in terms) return problem('length', terms);
  const bareScale = unit === 'mm' ? 1 : MM_PER_INCH;
  const hasBare = terms.some((term) => term.scale === undefined);
  const named = terms.find((term) => term.scale !== undefined && term.scale !== bareScale);
  if (hasBare && named !== undefined) {
    return problem('length', { kind: 'someWithoutUnit' });
  }
  const mm = terms.reduce((sum, term) => sum + term.value * (term.scale ?? bareScale), 0) + 0;
  if (!(Math.abs(mm) <= MAX_LENGTH)) return problem('length', { kind: 'tooLong' });
  return { kind: 'length', mm };
}

/** An angle in degrees from what was typed; a bare number is in degrees. */
export function parseAngle(text: string): ParsedAngle {
  const terms = termsOf(text, ANGLE_UNITS);
  if ('kind' in terms) return problem('angle', terms);
  if (terms.some((term) => term.scale === undefined) && terms.some((term) => term.scale !== undefined)) {
    return problem('angle', { kind: 'someWithoutUnit' });
  }
  const deg = terms.reduce((sum, term) => sum + term.value * (term.scale ?? 1), 0) + 0;
  if (!(Math.abs(deg) <= 36_000)) return problem('angle', { kind: 'tooManyTurns' });
  return { kind: 'angle', deg };
}

function problem(of: MeasureProblem['of'], fault: Fault): { kind: 'problem'; problem: MeasureProblem } {
  return { kind: 'problem', problem: { ...fault, of } };
}

/** A signed number with the size of its unit, or with none. */
interface Term {
  readonly value: number;
  readonly scale: number | undefined;
}

const NUMBER = /^(?:(\d+)\s+(\d+)\s*\/\s*(\d+)|(\d+)\s*\/\s*(\d+)|(\d+(?:[.,]\d*)?|[.,]\d+))/;

/** The terms of a sum, or what is wrong with it. Inside an angle such as 54° 40' the signs between terms may be missing. */
function termsOf(text: string, units: Readonly<Record<string, number>>): readonly Term[] | Fault {
  let rest = plainSigns(text);
  if (rest === '') return { kind: 'nothing' };
  const terms: Term[] = [];
  let sign = 1;
  while (rest !== '') {
    const operator = /^([+-])\s*/.exec(rest);
    if (operator !== null) {
      sign = operator[1] === '-' ? -1 : 1;
      rest = rest.slice(operator[0].length);
    } else if (terms.length > 0 && !mayFollow(terms.at(-1), units)) {
      return { kind: 'notUnderstood', text: rest };
    }
    const number = NUMBER.exec(rest);
    if (number === null) {
      return rest === '' ? { kind: 'endsEarly' } : { kind: 'noNumber', text: rest };
    }
    rest = rest.slice(number[0].length).trimStart();
    const value = amountOf(number);
    if (!Number.isFinite(value)) return { kind: 'notFinite', text: number[0] };
    const name = /^(?:[\p{L}µ]+|["'°])/u.exec(rest)?.[0];
    const scale =
      name === undefined ? undefined : Object.hasOwn(units, name.toLowerCase()) ? units[name.toLowerCase()] : undefined;
    if (name !== undefined && scale === undefined) return { kind: 'unknownUnit', text: name };
    rest = rest.slice(name?.length ?? 0).trimStart();
    terms.push({ value: sign * value, scale });
  }
  return terms;
}

/** Minutes after degrees, seconds after minutes: the sign carries on. Lengths always want a sign between terms. */
function mayFollow(last: Term | undefined, units: Readonly<Record<string, number>>): boolean {
  return last?.scale !== undefined && Object.hasOwn(units, '°') && last.scale <= 1;
}

function amountOf(match: RegExpExecArray): number {
  const [, whole, above, below, numerator, denominator, decimal] = match;
  if (decimal !== undefined) return Number(decimal.replace(',', '.'));
  if (whole !== undefined) return Number(whole) + Number(above) / Number(below);
  return Number(numerator) / Number(denominator);
}

const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};

/** The same text with plain signs: one kind of minus, quotes and micro sign, fractions written out, single spaces. */
function plainSigns(text: string): string {
  return text
    .replace(/[½¼¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/[−–]/g, '-')
    .replace(/[″“”]|''/g, '"')
    .replace(/[′’]/g, "'")
    .replace(/μ/g, 'µ')
    .replace(/\s+/g, ' ')
    .trim();
}

/**
 * A length in figures, in the wanted unit: a point, no exponent, no grouping, never minus zero.
 * `mm` must be finite and within `MAX_LENGTH`; `decimals` from 0 to 6.
 */
export function lengthText(mm: number, unit: LengthUnit, decimals: number): string {
  return fixed(unit === 'mm' ? mm : mm / MM_PER_INCH, decimals);
}

/** The same with the unit after it. */
export function lengthWithUnit(mm: number, unit: LengthUnit, decimals: number): string {
  return `${lengthText(mm, unit, decimals)} ${unit === 'mm' ? 'mm' : 'in'}`;
}

/** A number with so many decimals, never minus zero. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return /^-[0.]*$/.test(text) ? text.slice(1) : text;
}
