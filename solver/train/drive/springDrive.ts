/** A mainspring in a barrel: turns, torque along the run, energy, run time. */
import { checkNumbers, type Refusal } from './inputCheck.ts';

/** A spring and its barrel. */
export interface SpringDriveOptions {
  /** Inside radius of the barrel and radius of its arbor, mm. */
  readonly barrelRadius: number;
  readonly arborRadius: number;
  /** Thickness, height (width of the strip) and length of the spring, mm. */
  readonly thickness: number;
  readonly height: number;
  readonly length: number;
  /** Young's modulus, N/mm² (default 205000: common for hardened carbon steel, from memory of steel tables). */
  readonly modulus?: number;
  /** Time of one turn of the barrel, seconds. */
  readonly secondsPerTurn: number;
}

/** What a spring gives, from full wind to rest. */
export interface SpringDrive {
  readonly kind: 'spring';
  /** Turns between lying against the barrel's wall and lying on the arbor. */
  readonly turns: number;
  readonly runSeconds: number;
  /** Share of the free room that the spring fills; a half gives the most turns. */
  readonly fill: number;
  /** Length that would give the most turns, mm. */
  readonly bestLength: number;
  /** Torque that each turn of winding adds, N·mm. */
  readonly torquePerTurn: number;
  /** Greatest bending strain of the strip, as thickness over diameter on the arbor. */
  readonly strain: number;
}

/**
 * Geometry of a flat spring: coils packed on the arbor reach √(r² + Lt/π), coils against the wall leave √(R² − Lt/π)
 * free; the turns are the difference of the coils. Torque grows by E·h·t³/(12 L) for each radian wound (bending of a
 * thin strip). Common handbook theory of mainsprings; friction between the coils is not in it.
 */
export function springDrive(options: SpringDriveOptions): SpringDrive | Refusal {
  const { barrelRadius, arborRadius, thickness, height, length, modulus = 205_000, secondsPerTurn } = options;
  const problems = [
    ...checkNumbers({
      barrelRadius: { value: barrelRadius, above: 0, upTo: 1000 },
      arborRadius: { value: arborRadius, above: 0, upTo: 1000 },
      thickness: { value: thickness, above: 0, upTo: 10 },
      height: { value: height, above: 0, upTo: 1000 },
      length: { value: length, above: 0, upTo: 1e6 },
      modulus: { value: modulus, above: 0, upTo: 1e6 },
      secondsPerTurn: { value: secondsPerTurn, above: 0, upTo: 1e9 },
    }),
  ];
  const room = Math.PI * (barrelRadius ** 2 - arborRadius ** 2);
  if (problems.length === 0 && arborRadius >= barrelRadius) {
    problems.push({
      field: 'arborRadius',
      found: arborRadius,
      expected: { kind: 'insideBarrel', below: barrelRadius },
    });
  } else if (problems.length === 0 && length * thickness >= room) {
    problems.push({ field: 'length', found: length, expected: { kind: 'fillsBarrel', below: room / thickness } });
  }
  if (problems.length > 0) return { kind: 'refused', problems };
  const area = (length * thickness) / Math.PI;
  const wound = (Math.sqrt(arborRadius ** 2 + area) - arborRadius) / thickness;
  const unwound = (barrelRadius - Math.sqrt(barrelRadius ** 2 - area)) / thickness;
  const turns = wound - unwound;
  const torquePerTurn = ((modulus * height * thickness ** 3) / (12 * length)) * 2 * Math.PI;
  const fill = (length * thickness) / room;
  const bestLength = room / (2 * thickness);
  return {
    kind: 'spring',
    turns,
    runSeconds: turns * secondsPerTurn,
    fill,
    bestLength,
    torquePerTurn,
    strain: thickness / (2 * arborRadius),
  };
}
