/** Where the pallets stand: the distance of their axis from the escape wheel's by the span. */
import { checkNumbers, type Refusal } from './inputCheck.ts';

/** Where the pallets' axis stands against the escape wheel's. */
export interface PalletPlace {
  readonly kind: 'pallets';
  /** Distance of the axes, mm: the tangents at the two teeth meet there. */
  readonly distance: number;
  /** Angle between the two teeth as seen from the escape wheel's centre, degrees. */
  readonly spanDeg: number;
  /** Length of each tangent, mm: the pallets' radius. */
  readonly palletRadius: number;
  readonly teeth: number;
  /** Tooth spaces between the pallets. */
  readonly span: number;
}

/**
 * Pallets that span `span` tooth spaces (2½, 7½ …) of a wheel of `teeth` teeth and tip radius `radius`, mm:
 * distance = radius / cos(half the span angle). Common practice of anchor and deadbeat escapements:
 * 30 teeth over 7½ stand at √2 times the radius.
 */
export function palletPlace(radius: number, teeth: number, span: number): PalletPlace | Refusal {
  const problems = [
    ...checkNumbers({
      radius: { value: radius, above: 0, upTo: 10_000 },
      teeth: { value: teeth, from: 4, upTo: 1000, whole: true },
      span: { value: span, above: 0 },
    }),
  ];
  if (problems.length === 0 && span >= teeth / 2) {
    problems.push({ field: 'span', found: span, expected: { kind: 'underHalfTheTeeth', teeth } });
  }
  if (problems.length > 0) return { kind: 'refused', problems };
  const half = (Math.PI * span) / teeth;
  const distance = radius / Math.cos(half);
  return {
    kind: 'pallets',
    distance,
    spanDeg: (360 * span) / teeth,
    palletRadius: radius * Math.tan(half),
    teeth,
    span,
  };
}
