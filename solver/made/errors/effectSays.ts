/** What an error does to depths, gaps and checks, in words. */
import { fixed } from '../../movement/decimal.ts';
import type { ErrorEffect, ErrorsFound, SourceFound } from './found.ts';

/** "0.020 mm on the depth of W1 and P2" */
export function errorSays(source: SourceFound): string {
  return `${fixed(source.plusMinus, 3)} mm on ${source.label}`;
}

/** What follows: "moves the depth A 64 : 8 B by 0.017 mm" */
export function effectSays(found: ErrorsFound, effect: ErrorEffect): string {
  const by = `by ${fixed(Math.abs(effect.change), 3)} mm`;
  switch (effect.on) {
    case 'depth': {
      const depth = `the depth ${found.depths[effect.index]?.label ?? ''}`;
      return effect.by === 'room' ? `changes the room of ${depth} ${by}` : `moves ${depth} ${by}`;
    }
    case 'gap':
      return `changes the gap of ${found.gaps[effect.index]?.label ?? ''} ${by}`;
    case 'check':
      return `brings ${found.checks[effect.index]?.label ?? ''} out ${by}`;
  }
}
