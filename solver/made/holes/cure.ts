/** What to do about a hole that is not where it should be, with numbers. */
import { fixed } from '../../movement/decimal.ts';

/** A displacement as the maker sees it: how far, and where to on the clock face of the marked side. */
export interface Shift {
  /** mm */
  readonly amount: number;
  /** Degrees counter-clockwise from the right, in [0, 360). */
  readonly angleDeg: number;
  /** Hour on a clock face, 12 at the top, to the half hour: 12, 12.5, 1, … 11.5. */
  readonly clock: number;
}

/** A displacement in words of amount and direction. */
export function shiftOf(dx: number, dy: number): Shift {
  const angle = (Math.atan2(dy, dx) * 180) / Math.PI;
  const angleDeg = ((angle % 360) + 360) % 360;
  const hours = ((90 - angle) / 30 + 24) % 12;
  const half = Math.round(hours * 2) / 2;
  const clock = half === 0 || half === 12 ? 12 : half === 0.5 ? 12.5 : half;
  return { amount: Math.hypot(dx, dy), angleDeg, clock };
}

/** "0.042 mm along 31.0° (towards 2 o'clock)". */
export function shiftWords({ amount, angleDeg, clock }: Shift): string {
  const hour = Number.isInteger(clock) ? `${clock} o'clock` : `half past ${Math.floor(clock)}`;
  return `${fixed(amount, 3)} mm along ${fixed(angleDeg, 1)}° (towards ${hour})`;
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
  | { readonly kind: 'leave'; readonly says: string }
  | { readonly kind: 'ream'; readonly diameter: number; readonly towards: Shift; readonly says: string }
  | { readonly kind: 'bush'; readonly bush: EccentricBush; readonly says: string }
  | { readonly kind: 'plug'; readonly says: string };

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
    return [{ kind: 'leave', says: `Off by ${fixed(amount, 3)} mm: within what marking out gives. Leave it.` }];
  }
  const cures: Cure[] = [];
  // A hole moved by e and cleaned up all round needs twice e more in diameter.
  const reamed = diameter + 2 * amount;
  if (reamed <= roomDiameter) {
    cures.push({
      kind: 'ream',
      diameter: reamed,
      towards,
      says: `Draw it over by ${shiftWords(towards)}: the hole cleans up at Ø ${fixed(reamed, 3)} or more; bush it back to Ø ${fixed(diameter, 3)}.`,
    });
  }
  const bush = eccentricBush(diameter, towards, options.leastWall ?? 0.8);
  if (bush.outer <= roomDiameter) {
    cures.push({
      kind: 'bush',
      bush,
      says: `Eccentric bush in the hole opened where it stands: Ø ${fixed(bush.outer, 3)} outside, bore Ø ${fixed(bush.bore, 3)} set off ${shiftWords(towards)}. In a three-jaw chuck pack one jaw by ${fixed(bush.shim.narrow, 3)} (narrow jaws) or ${fixed(bush.shim.flat, 3)} (flat jaws).`,
    });
  }
  const plugBeyond = options.plugBeyond ?? diameter / 5;
  const tight =
    cures.length === 0
      ? `There is room for Ø ${fixed(roomDiameter, 3)} only, too little to draw it over or bush it. `
      : '';
  const plug: Cure = {
    kind: 'plug',
    says: `${tight}Plug it and drill afresh ${shiftWords(towards)} from where it stands. Pressing and soldering: eye protection, ventilation, and what your local rules ask.`,
  };
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
