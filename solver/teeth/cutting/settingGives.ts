/** "This setting gives N teeth": what a crank setting really divides. */
import { gcd } from './dividing.ts';

/** What a crank setting divides the circle into. */
export interface SettingResult {
  /** Teeth in all when the pattern closes. */
  readonly teeth: number;
  /** Turns of the work until it closes; above 1 the cuts of later rounds fall between those of the first. */
  readonly rounds: number;
  readonly says: string;
}

/**
 * Teeth that a setting gives on a head of `ratio`:1.
 * @param turns whole turns of the crank, @param holes holes beyond them on a `circle` (spaces, not the hole it starts in)
 */
export function settingGives(
  ratio: number,
  turns: number,
  holes: number,
  circle: number,
): SettingResult | { readonly kind: 'none'; readonly says: string } {
  const moved = turns * circle + holes;
  const whole = [ratio, turns, holes, circle].every(Number.isInteger);
  if (!whole || moved <= 0 || circle <= 0 || ratio <= 0) {
    return {
      kind: 'none',
      says: `A setting of ${turns} turns and ${holes} holes on ${circle} at ${ratio}:1 moves nothing that can be counted: turns and holes must be whole and come to more than nothing.`,
    };
  }
  const full = ratio * circle;
  const share = gcd(full, moved);
  const [teeth, rounds] = [full / share, moved / share];
  const plain = rounds === 1;
  return {
    teeth,
    rounds,
    says: plain
      ? `This setting gives ${teeth} teeth.`
      : `This setting does not close in one turn: it gives ${teeth} marks in ${rounds} turns of the work. In one turn it comes nearest to ${Math.round(full / moved)} teeth.`,
  };
}
