/** What a crank setting really divides: so many teeth, or a pattern that closes only after several rounds. */
import { gcd } from './dividing.ts';

/** What a crank setting divides the circle into. */
export interface SettingResult {
  readonly kind: 'closes' | 'goesRound';
  /** Teeth in all when the pattern closes. */
  readonly teeth: number;
  /** Turns of the work until it closes; above 1 the cuts of later rounds fall between those of the first. */
  readonly rounds: number;
  /** The count that one turn of the work comes nearest to. */
  readonly nearest: number;
}

/** A crank setting that moves nothing that can be counted: a part of a turn or hole, or nothing at all. */
export interface NoSetting {
  readonly kind: 'none';
  readonly ratio: number;
  readonly turns: number;
  readonly holes: number;
  readonly circle: number;
}

/**
 * Teeth that a setting gives on a head of `ratio`:1.
 * @param turns whole turns of the crank, @param holes holes beyond them on a `circle` (spaces, not the hole it starts in)
 */
export function settingGives(ratio: number, turns: number, holes: number, circle: number): SettingResult | NoSetting {
  const moved = turns * circle + holes;
  const whole = [ratio, turns, holes, circle].every(Number.isInteger);
  if (!whole || moved <= 0 || circle <= 0 || ratio <= 0) return { kind: 'none', ratio, turns, holes, circle };
  const full = ratio * circle;
  const share = gcd(full, moved);
  const [teeth, rounds] = [full / share, moved / share];
  return { kind: rounds === 1 ? 'closes' : 'goesRound', teeth, rounds, nearest: Math.round(full / moved) };
}
