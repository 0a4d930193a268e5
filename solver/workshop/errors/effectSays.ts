/** What one error does to one depth, gap or check, as a sentence. */
import { fixed } from '../write/decimal.ts';
import type { ErrorEffect, ErrorsFound, SourceFound } from './found.ts';

/** "0.020 mm on the depth of W1 and P2 moves the depth A 64 : 8 B by 0.017 mm." */
export function effectSays(found: ErrorsFound, source: SourceFound, effect: ErrorEffect): string {
  const size = fixed(source.plusMinus, 3);
  const by = `${fixed(Math.abs(effect.change), 3)} mm`;
  const what = `${size} mm on ${source.label}`;
  switch (effect.on) {
    case 'depth': {
      const depth = `the depth ${found.depths[effect.index]?.label ?? ''}`;
      return effect.by === 'room'
        ? `${what} changes the room of ${depth} by ${by}.`
        : `${what} moves ${depth} by ${by}.`;
    }
    case 'gap':
      return `${what} changes the gap of ${found.gaps[effect.index]?.label ?? ''} by ${by}.`;
    case 'check':
      return `${what} brings ${found.checks[effect.index]?.label ?? ''} out by ${by}.`;
  }
}
