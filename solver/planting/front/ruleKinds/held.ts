/** A point held at coordinates. */
import { asPoint } from '../../../geometry/index.ts';
import type { RuleKindInPlanting } from './kind.ts';
import { between, offValue } from './measuring.ts';

/** A place that is given: the network has the point there from the start. */
export const heldInPlanting: RuleKindInPlanting<'held'> = {
  holds: ({ point, at }) => ({ point, at: asPoint(at) }),
  measure: ({ placeOf }, { point, at }) => offValue(between(asPoint(at), placeOf(point))),
  settles: ({ point }) => [{ rule: { kind: 'held', point: point.id, at: [point.x, point.y] }, across: undefined }],
};
