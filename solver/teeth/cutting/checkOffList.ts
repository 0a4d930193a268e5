/** One line a tooth, each with the absolute reading, the last closing to the full turn. */

/** The reading for one tooth. */
export interface CheckOffLine {
  /** Spaces cut when this reading is reached: 0 for the first cut, the count for the closing line. */
  readonly tooth: number;
  /** Absolute angle, whole seconds of arc. */
  readonly arcSeconds: number;
  readonly angle: string;
  /** Crank turns from the start, whole, and the angle beyond them, for a table of `ratio`:1. */
  readonly turns: number;
  readonly beyond: string;
  /** Every tenth line is boxed, so that a miscount shows. */
  readonly boxed: boolean;
}

const FULL = 360 * 3600;

/** 125° 07′ 30″ of whole seconds. */
export function angleText(arcSeconds: number): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  const degrees = Math.floor(arcSeconds / 3600);
  return `${degrees}° ${two(Math.floor(arcSeconds / 60) % 60)}′ ${two(arcSeconds % 60)}″`;
}

/** Nearest whole second to i/count of a turn, in integers: no rounding creeps in. */
const secondsAt = (i: number, count: number): number => Math.floor((2 * i * FULL + count) / (2 * count));

/** The list for a count; `ratio` is the rotary table's (90: one turn of the crank is 4°). */
export function checkOffList(count: number, ratio: number): readonly CheckOffLine[] {
  const perTurn = FULL / ratio;
  return Array.from({ length: count + 1 }, (_, i) => {
    const arcSeconds = secondsAt(i, count);
    const turns = Math.floor(arcSeconds / perTurn + 1e-9);
    return {
      tooth: i,
      arcSeconds,
      angle: angleText(arcSeconds),
      turns,
      beyond: angleText(Math.round(arcSeconds - turns * perTurn)),
      boxed: i > 0 && i % 10 === 0,
    };
  });
}
