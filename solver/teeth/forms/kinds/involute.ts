/** Involute teeth. */
import { involuteChoice } from '../../cutting/cutterChoice.ts';
import { usualMeasures } from '../../cutting/involuteMeasures.ts';
import { anglesDiffer, involuteDepth } from '../../sizes/involuteDepth.ts';
import { involuteSize, rackOf } from '../../sizes/involuteSize.ts';
import { involutePieces } from '../involuteTeeth.ts';
import { CLOSE_SHAKE, type FormKind } from './formKind.ts';

/** Teeth that a straight rack generates: they run rightly at any distance near their own. */
export const involuteKind: FormKind = {
  size: involuteSize,
  flanks: involutePieces,
  cutter: (wheel, movement) => (wheel.internal ? { kind: 'ring' } : involuteChoice(wheel, movement)),
  measures: (wheel, { module, thickness }, movement) =>
    usualMeasures({ teeth: wheel.teeth, module, alpha: rackOf(wheel, movement).alpha, thickness }),
  mismatch: anglesDiffer,
  depth: involuteDepth,
  shake: CLOSE_SHAKE,
  remarks: { engaging: false, corners: true },
};
