/** The maker's measuring tools, read from what was kept. */
import { RATIOS } from './otherWays.ts';

/** The tools as they are kept. */
export interface Tools {
  /** Turns of the handle for one turn of the rotary table. */
  readonly ratio: number;
  /** The angles of the table grow clockwise. */
  readonly clockwise: boolean;
  /** Errors of the table, as they were typed. */
  readonly errorText: string;
  /** Diameter of the edge finder, mm; 0 without. */
  readonly finder: number;
}

const USUAL: Tools = { ratio: 90, clockwise: false, errorText: '', finder: 0 };
/** Longer texts and larger finders were kept by nobody. */
const LONGEST_TEXT = 20_000;
const LARGEST_FINDER = 50;

/** Reads what was kept; whatever cannot be used is left at the usual. */
export function readTools(text: string | null): Tools {
  let value: unknown;
  try {
    value = JSON.parse(text ?? '{}');
  } catch {
    return USUAL;
  }
  const { ratio, clockwise, errorText, finder } = (typeof value === 'object' && value !== null ? value : {}) as Record<
    string,
    unknown
  >; // each field is asked below
  return {
    ratio: RATIOS.find((each) => each === ratio) ?? USUAL.ratio,
    clockwise: clockwise === true,
    errorText: typeof errorText === 'string' && errorText.length <= LONGEST_TEXT ? errorText : USUAL.errorText,
    finder: typeof finder === 'number' && finder >= 0 && finder <= LARGEST_FINDER ? finder : USUAL.finder,
  };
}
