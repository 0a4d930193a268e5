/** Findings of depths that bind, bottom or lose contact under shake. */
import type { Point } from '../../geometry/index.ts';
import type { RuleOf, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { depthVerdicts, verdictsOf } from '../depths/depthVerdicts.ts';
import type { Finding } from '../findings/finding.ts';

/**
 * One a pair; teeth of different size are told as such, and not by their distance.
 *
 * @param isAsked of which depths only, where not of all
 */
export function checkDepthsUnderShake(
  placed: PlacedMovement,
  isAsked?: (rule: RuleOf<'depth'>) => boolean,
): readonly Finding[] {
  const verdicts = isAsked ? verdictsOf(placed, isAsked) : [...depthVerdicts(placed).values()];
  return verdicts.flatMap(({ wheels: [first, second], fault, severity }): Finding[] => {
    if (!fault || !severity || fault.kind === 'sizes') return [];
    // Teeth that cannot be made are told of their own wheel.
    if (fault.kind === 'noMesh' && 'wheel' in fault.window.why) return [];
    const at = meshOf(placed, first, second);
    return [
      {
        key: `depth shake ${first.id} ${second.id}`,
        kind: 'depth',
        severity,
        parts: [first.id, second.id],
        ...(at && { at: [at, at] as const }),
        cause: { kind: 'underShake', wheels: [first.id, second.id], fault },
      },
    ];
  });
}

/** Where the pitch circles of a pair touch, mm; undefined where an arbor has no place. A ring's wheel lies inside it. */
function meshOf({ places }: PlacedMovement, first: Wheel, second: Wheel): Point | undefined {
  const [a, b] = [places.get(first.arbor), places.get(second.arbor)];
  if (!a || !b) return undefined;
  const [own, other] = [first.internal ? -first.teeth : first.teeth, second.internal ? -second.teeth : second.teeth];
  const share = own / (own + other);
  return { x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) };
}
