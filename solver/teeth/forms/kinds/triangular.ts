/** Straight-sided teeth, as ancient instruments have them. */

import { halfToothAngle, triangularSize } from '../../sizes/triangularSize.ts';
import type { CalculatedDepth } from '../../sizes/wheelSize.ts';
import { trianglePieces } from '../triangularTeeth.ts';
import { CLOCK_SHAKE, type FormKind, type PlainPair } from './formKind.ts';

/** Clearance left between a triangular tip and the mate's root, × module: our own assumption. */
const TRIANGLE_CLEARANCE = 0.1;

/** Triangular teeth of few-toothed wheels are shallow: the distance at which no tip reaches the other's root. */
function clearOfRoots({ wheels, distance, internal, sizeOf }: PlainPair): CalculatedDepth {
  if (internal) return { kind: 'depth', distance, internal };
  const [a, b] = [sizeOf(wheels[0]), sizeOf(wheels[1])];
  const most = Math.max(a.tipRadius + b.rootRadius, b.tipRadius + a.rootRadius) + TRIANGLE_CLEARANCE * a.module;
  return { kind: 'depth', distance: Math.max(distance, most), internal };
}

/** Triangles: they always bear on their tips, so no remark is made of it. */
export const triangularKind: FormKind = {
  size: triangularSize,
  flanks: trianglePieces,
  cutter: (wheel) => ({ kind: 'vCutter', angle: 2 * halfToothAngle(wheel), space: (2 * Math.PI) / wheel.teeth }),
  depth: clearOfRoots,
  shake: CLOCK_SHAKE,
  remarks: { engaging: false, corners: false },
};
