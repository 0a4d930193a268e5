/** Flanks of triangular teeth: one straight line from root to tip. */
import type { Wheel } from '../../movement/schema.ts';
import { triangleOf } from '../sizes/triangularSize.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { trianglePiece } from './flankCurves.ts';
import type { Flanks } from './toothForm.ts';

/** The single piece of a triangular flank; the root is where neighbours meet when the dedendum asks for more. */
export function trianglePieces(wheel: Wheel, size: WheelSize): Flanks {
  const { apex, root: filling, g } = triangleOf(wheel);
  const doubts: ToothDoubt[] = [];
  const deeper = wheel.internal ? size.rootRadius > filling : size.rootRadius < filling;
  const root = deeper ? filling : size.rootRadius;
  if (deeper && Math.abs(size.rootRadius - filling) > 1e-6 * size.module) {
    const [meetDiameter, rootDiameter] = [2 * filling, 2 * size.rootRadius];
    doubts.push({ kind: 'rootsMeet', wheel: wheel.id, meetDiameter, rootDiameter });
  }
  const [from, to] = wheel.internal ? [size.tipRadius, root] : [root, size.tipRadius];
  if (!(to > from)) return { kind: 'none', why: { kind: 'flatTriangles', wheel: wheel.id } };
  return { kind: 'flanks', pieces: [trianglePiece(apex, g, wheel.internal, from, to)], doubts };
}
