/** What to do about a hole that is not where it should be, with numbers. */

/** A displacement as the maker sees it: how far, and where to. */
export interface Shift {
  /** mm */
  readonly amount: number;
  /** Radians anticlockwise from the right, in (−π, π]. */
  readonly angle: number;
}

/** Amount and direction of a displacement, mm. */
export function shiftOf(dx: number, dy: number): Shift {
  return { amount: Math.hypot(dx, dy), angle: Math.atan2(dy, dx) };
}

/** The hole, and the maker's own limits for mending it. */
export interface CureOptions {
  /** Finished diameter of the hole, mm. */
  readonly diameter: number;
  /** Largest diameter that may be opened there before another part is met, mm; none known when left out. */
  readonly roomDiameter?: number | undefined;
  /** Nearer than this it is left, mm (default 0.015). */
  readonly leaveWithin?: number | undefined;
  /** Beyond this displacement the hole is plugged and drilled afresh, mm (default: a fifth of its diameter). */
  readonly plugBeyond?: number | undefined;
  /** Wall of an eccentric bush at its thinnest, mm (default 0.8, common practice for brass). */
  readonly leastWall?: number | undefined;
}

/** An eccentric bush and how to turn it in a three-jaw chuck. */
export interface EccentricBush {
  /** Outer diameter, mm; the thinnest wall is the stated one. */
  readonly outer: number;
  readonly bore: number;
  readonly offset: number;
  /** The bore lies this way from the middle of the bush. */
  readonly towards: Shift;
  /** Packing under one jaw, mm: for narrow jaws that touch at a line, and for flat jaws wider than the curve. */
  readonly shim: { readonly narrow: number; readonly flat: number };
}

/** One way to mend a hole, with its numbers. */
export type Cure =
  /** It stands so near that it is left. */
  | { readonly kind: 'leave'; readonly towards: Shift }
  /** Drawn over until it cleans up at `diameter`, then bushed back to `bushTo`, mm. */
  | { readonly kind: 'ream'; readonly diameter: number; readonly bushTo: number; readonly towards: Shift }
  | { readonly kind: 'bush'; readonly bush: EccentricBush }
  /** Plugged and drilled afresh; `onlyRoom` is the widest hole there, mm, where that is why nothing gentler is offered. */
  | { readonly kind: 'plug'; readonly towards: Shift; readonly onlyRoom?: number };

/** Below this a displacement is not worth a cure, mm: what careful marking out gives (practice: 0.01 to 0.02). */
const NOT_WORTH = 0.015;

/**
 * The cures of a hole that stands off its place, the gentlest first.
 *
 * @param dx, dy from where the hole is to where it should be, mm, as seen on the marked face
 */
export function curesFor(dx: number, dy: number, options: CureOptions): readonly Cure[] {
  const towards = shiftOf(dx, dy);
  const { amount } = towards;
  const { diameter, roomDiameter = Number.POSITIVE_INFINITY } = options;
  if (amount <= (options.leaveWithin ?? NOT_WORTH)) {
    return [{ kind: 'leave', towards }];
  }
  const cures: Cure[] = [];
  // A hole moved by e and cleaned up all round needs twice e more in diameter.
  const reamed = diameter + 2 * amount;
  if (reamed <= roomDiameter) {
    cures.push({ kind: 'ream', diameter: reamed, bushTo: diameter, towards });
  }
  const bush = eccentricBush(diameter, towards, options.leastWall ?? 0.8);
  if (bush.outer <= roomDiameter) {
    cures.push({ kind: 'bush', bush });
  }
  const plugBeyond = options.plugBeyond ?? diameter / 5;
  const plug: Cure = { kind: 'plug', towards, ...(cures.length === 0 ? { onlyRoom: roomDiameter } : {}) };
  return amount > plugBeyond ? [plug, ...cures] : [...cures, plug];
}

function eccentricBush(bore: number, towards: Shift, wall: number): EccentricBush {
  const outer = bore + 2 * (wall + towards.amount);
  return { outer, bore, offset: towards.amount, towards, shim: shimFor(outer, towards.amount) };
}

/**
 * Packing under one jaw of a three-jaw chuck that sets round work of diameter `outer` off by `offset`, mm.
 *
 * Three jaws at 120° move together. For jaws that touch along a line: t = 3e/2 − r + √(r² − 3e²/4), from the triangle
 * of axis, work's centre and contact; for flat jaws wider than the curve each face is a tangent, and t = 3e/2 exactly.
 * Derived here; the narrow form tends to the flat one for small offsets.
 */
export function shimFor(outer: number, offset: number): { readonly narrow: number; readonly flat: number } {
  const r = outer / 2;
  const root = r * r - 0.75 * offset * offset;
  if (!(root >= 0)) throw new RangeError(`offset ${offset}: expected less than 1.15 times the radius ${r}`);
  // r − √(r² − 3e²/4) without cancellation.
  const sag = (0.75 * offset * offset) / (r + Math.sqrt(root));
  return { narrow: 1.5 * offset - sag, flat: 1.5 * offset };
}
