/** How a coupling joins two arbors, before it is known whether they are there and on which arm they stand. */
import type { ArborId, WheelId } from '../../movement/ids.ts';
import type { TurningKind, Wheel } from '../../movement/schema.ts';

/** Two wheels in mesh, or an arbor that takes a wheel on by so many of its teeth at each turn; the first named drives. */
export type Join = { readonly kind: TurningKind } & (
  | { readonly by: 'wheels'; readonly wheels: readonly [WheelId, WheelId]; readonly sense: 1 | -1 }
  | {
      readonly by: 'arbor';
      readonly arbor: ArborId;
      readonly wheel: WheelId;
      readonly teeth: number;
      readonly senseOn: (wheel: Wheel) => 1 | -1;
    }
);
