/** Flanks of triangular teeth: one straight line from root to tip. */
import type { Wheel } from '../../movement/schema.ts';
import { calledOf } from '../sizes/called.ts';
import { triangleOf } from '../sizes/triangularSize.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import { trianglePiece } from './flankCurves.ts';
import type { Flanks } from './toothForm.ts';

/** The single piece of a triangular flank; the root is where neighbours meet when the dedendum asks for more. */
export function trianglePieces(wheel: Wheel, size: WheelSize): Flanks {
  const { apex, root: filling, g } = triangleOf(wheel);
  const warns: string[] = [];
  const deeper = wheel.internal ? size.rootRadius > filling : size.rootRadius < filling;
  const root = deeper ? filling : size.rootRadius;
  if (deeper && Math.abs(size.rootRadius - filling) > 1e-6 * size.module) {
    warns.push(
      `Neighbouring teeth of ${calledOf(wheel)} meet at diameter ${(2 * filling).toFixed(2)}: the roots are there, not at ${(2 * size.rootRadius).toFixed(2)}.`,
    );
  }
  const [from, to] = wheel.internal ? [size.tipRadius, root] : [root, size.tipRadius];
  if (!(to > from))
    return {
      kind: 'none',
      says: `${calledOf(wheel)}: the triangles have no height; check the tooth angle and thickness.`,
    };
  return { kind: 'flanks', pieces: [trianglePiece(apex, g, wheel.internal, from, to)], warns };
}
