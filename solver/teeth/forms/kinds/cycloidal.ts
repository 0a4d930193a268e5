/** Clock teeth: wheels and leaves by the tables of the trade, or by their own curves. */
import { clockChoice } from '../../cutting/cutterChoice.ts';
import { cycloidalRow } from '../../sizes/cycloidalRow.ts';
import { cycloidalSize } from '../../sizes/cycloidalSize.ts';
import { clockPieces } from '../clockTeeth.ts';
import { CLOCK_SHAKE, type FormKind } from './formKind.ts';

/** Radial flanks below the pitch circle, a rolled curve or an arc above it. */
export const cycloidalKind: FormKind = {
  size: cycloidalSize,
  flanks: clockPieces,
  role: (wheel, movement) => cycloidalRow(wheel, movement).role,
  cutter: (wheel, movement) => (wheel.internal ? { kind: 'ring' } : clockChoice(wheel, movement)),
  shake: CLOCK_SHAKE,
  remarks: { engaging: true, corners: true },
};
