/** Measuring with callipers: chord and height of a tooth, and over the tips of odd counts. */

/** What a tooth calliper is set to, and what it reads. */
export interface Chord {
  /** Straight thickness at the pitch circle, and its depth below the tip, mm. */
  readonly thickness: number;
  readonly height: number;
}

/** Chord of an arc thickness on the pitch circle, and how far below the tip circle it lies. */
export function chordOf(pitchRadius: number, tipRadius: number, thickness: number): Chord {
  const half = thickness / (2 * pitchRadius);
  // 1 − cos as a half-angle square, so that large wheels keep their digits.
  return {
    thickness: 2 * pitchRadius * Math.sin(half),
    height: Math.abs(tipRadius - pitchRadius + 2 * pitchRadius * Math.sin(half / 2) ** 2),
  };
}

/** What jaws read over the tips, and what that lacks to the diameter. */
export interface OverTips {
  /** What flat jaws read across the tips, mm. */
  readonly reads: number;
  /** To be added to the reading for the true tip diameter, mm (0 for even counts). */
  readonly add: number;
}

/**
 * Reading of flat jaws over the tips. With an odd count one jaw rests on a tip and the other bridges the two opposite,
 * touching the near corners of their lands.
 * @param landHalf half of the angle that the land of a tip covers, radians
 */
export function overTips(teeth: number, tipRadius: number, landHalf: number): OverTips {
  if (teeth % 2 === 0) return { reads: 2 * tipRadius, add: 0 };
  const lean = Math.max(0, Math.PI / teeth - Math.max(0, landHalf));
  const add = 2 * tipRadius * Math.sin(lean / 2) ** 2;
  return { reads: 2 * tipRadius - add, add };
}
