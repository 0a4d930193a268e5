/** Findings of depths that bind, bottom or lose contact under shake. */
import type { RuleOf } from '../../movement/schema.ts';
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
    const [a, b] = [placed.places.get(first.arbor), placed.places.get(second.arbor)];
    const at =
      a &&
      b &&
      ([
        { x: a.x, y: a.y },
        { x: b.x, y: b.y },
      ] as const);
    return [
      {
        key: `depth shake ${first.id} ${second.id}`,
        kind: 'depth',
        severity,
        parts: [first.id, second.id],
        ...(at && { at }),
        cause: { kind: 'underShake', wheels: [first.id, second.id], fault },
      },
    ];
  });
}
