/** Cutting data of a wheel: blank, depth, thickness, measuring, cutter, dividing. */

import type { WheelId } from '../../movement/ids.ts';
import { isOfPins, type Movement, type Wheel } from '../../movement/schema.ts';
import { formOfWheel } from '../forms/formOfWheel.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import { halfAngleAt } from '../forms/toothForm.ts';
import { troublesOfTeeth } from '../forms/troublesOfTeeth.ts';
import { leastRim } from '../outlines/usualArms.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { ToothDoubt, ToothFault } from '../toothFaults.ts';
import { type CheckOffLine, checkOffList } from './checkOffList.ts';
import type { CutterChoice } from './cutterChoice.ts';
import { cutterOf } from './cutters.ts';
import { exactWays } from './divideExactly.ts';
import { nearWays } from './divideNearly.ts';
import { type DividingKit, type DividingWay, type NearWay, USUAL_KIT } from './dividing.ts';
import type { OverPins, Span } from './involuteMeasures.ts';
import { type Chord, chordOf, type OverTips, overTips } from './toothCalliper.ts';

/** What is needed to cut one wheel, lengths in mm. */
export interface CuttingData {
  readonly wheel: WheelId;
  readonly teeth: number;
  readonly size: Wheel['size'];
  readonly source: string;
  /** Diameter to turn (or bore, for a ring), mm. */
  readonly blankDiameter: number;
  readonly rootDiameter: number;
  readonly pitchDiameter: number;
  /** Depth of cut from the blank, mm. */
  readonly wholeDepth: number;
  readonly thickness: number;
  /** Straight thickness on the pitch circle and its height below the tip; not for rings or pins. */
  readonly chord?: Chord;
  /** Involute wheels outside: over k teeth, over pins. */
  readonly span?: Span;
  readonly pins?: OverPins;
  readonly overTips?: OverTips;
  readonly leastRim: number;
  readonly cutter: CutterChoice;
  /** Exact ways; and where none of them is direct or simple, the nearest ones that are. */
  readonly dividing: readonly DividingWay[];
  readonly nearest: readonly NearWay[];
  readonly checkOff: readonly CheckOffLine[];
  /** Why the wheel has no teeth, or what is doubtful in them. */
  readonly doubts: readonly (ToothFault | ToothDoubt)[];
}

/** Which wheels, and with what they are divided. */
export interface CuttingOptions {
  readonly kit?: DividingKit;
  /** Ratio of the rotary table for the check-off list. */
  readonly tableRatio?: number;
}

/** Cutting data of one wheel. */
export function cuttingDataOf(wheel: Wheel, movement: Movement, options: CuttingOptions = {}): CuttingData {
  const size = sizeOfWheel(wheel, movement);
  const form = formOfWheel(wheel, movement);
  const kit = options.kit ?? USUAL_KIT;
  const dividing = exactWays(wheel.teeth, kit);
  const land = form.kind === 'teeth' ? halfAngleAt(form, form.tip) : 0;
  // The tip that the teeth really reach: pointed teeth end below the blank that the factors ask for.
  const tip = form.kind === 'teeth' && !form.open ? form.tip : size.tipRadius;
  const outside = !wheel.internal && !isOfPins(wheel);
  return {
    wheel: wheel.id,
    teeth: wheel.teeth,
    size: wheel.size,
    source: size.source,
    blankDiameter: 2 * tip,
    rootDiameter: 2 * size.rootRadius,
    pitchDiameter: 2 * size.pitchRadius,
    wholeDepth: Math.abs(tip - size.rootRadius),
    thickness: size.thickness,
    ...(outside
      ? { chord: chordOf(size.pitchRadius, tip, size.thickness), overTips: overTips(wheel.teeth, tip, land) }
      : {}),
    ...(outside ? kindOf(wheel).measures?.(wheel, size, movement) : {}),
    leastRim: leastRim(wheel, movement),
    cutter: cutterOf(wheel, movement),
    dividing,
    nearest: dividing.some(isPlain) ? [] : nearWays(wheel.teeth, kit),
    checkOff: checkOffList(wheel.teeth, options.tableRatio ?? 90),
    doubts: troublesOfTeeth(wheel, movement),
  };
}

const isPlain = (way: DividingWay): boolean => way.kind === 'direct' || way.kind === 'simple';
