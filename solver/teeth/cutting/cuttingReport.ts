/** Cutting data of every wheel: blank, depth, thickness, measuring, cutter, dividing; as plain data and as text. */
import type { WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { formOfWheel } from '../forms/formOfWheel.ts';
import { halfAngleAt } from '../forms/toothForm.ts';
import { leastRim } from '../outlines/usualArms.ts';
import { mm } from '../reports/figures.ts';
import { calledOf } from '../sizes/called.ts';
import { rackOf } from '../sizes/involuteSize.ts';
import { sizeWords } from '../sizes/moduleOf.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { WheelSize } from '../sizes/wheelSize.ts';
import { type CheckOffLine, checkOffList } from './checkOffList.ts';
import { type CutterChoice, cutterOf } from './cutters.ts';
import { exactWays } from './divideExactly.ts';
import { nearWays } from './divideNearly.ts';
import { type DividingKit, type DividingWay, type NearWay, USUAL_KIT } from './dividing.ts';
import { type OverPins, pinOnPitchCircle, type Span, sizeOverPins, spanOver, usualSpan } from './involuteMeasures.ts';
import { type Chord, chordOf, type OverTips, overTips } from './toothCalliper.ts';

/** What is needed to cut one wheel, lengths in mm. */
export interface CuttingData {
  readonly wheel: WheelId;
  readonly name: string;
  readonly teeth: number;
  readonly size: string;
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
  readonly cautions: readonly string[];
  readonly warns: readonly string[];
}

/** The cutting data that was asked for, or why it cannot be told. */
export type CuttingReport =
  | { readonly kind: 'report'; readonly wheels: readonly CuttingData[]; readonly text: string }
  | { readonly kind: 'unknown'; readonly says: string };

/** Which wheels, and with what they are divided. */
export interface CuttingOptions {
  /** Id of one wheel; all when absent. */
  readonly wheel?: string;
  readonly kit?: DividingKit;
  /** Ratio of the rotary table for the check-off list. */
  readonly tableRatio?: number;
}

/** The usual cautions of cutting; the sheet carries them once. */
export const CUTTING_CAUTIONS: readonly string[] = [
  'Cutting tools and flying chips injure: guard the cutter, wear eye protection, clamp the work, and follow the machine maker and local rules.',
  'Cut one space and the next, measure a tooth, then go round. Approach every division from one side.',
];

/** Cutting data of one wheel or of all. */
export function cuttingReport(movement: Movement, options: CuttingOptions = {}): CuttingReport {
  const asked = movement.wheels.filter((wheel) => options.wheel === undefined || wheel.id === options.wheel);
  if (asked.length === 0 && options.wheel !== undefined) {
    const known = movement.wheels.map((wheel) => wheel.id).join(', ');
    return {
      kind: 'unknown',
      says: `There is no wheel "${options.wheel}". Wheels of this movement: ${known || 'none'}.`,
    };
  }
  const wheels = asked.map((wheel) => cuttingDataOf(wheel, movement, options));
  const text = [...wheels.map(textOfCutting), CUTTING_CAUTIONS.map((line) => `! ${line}`).join('\n')].join('\n\n');
  return { kind: 'report', wheels, text };
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
  const outside = !wheel.internal && wheel.form !== 'lantern';
  return {
    wheel: wheel.id,
    name: calledOf(wheel),
    teeth: wheel.teeth,
    size: sizeWords(wheel.size),
    source: size.source,
    blankDiameter: 2 * tip,
    rootDiameter: 2 * size.rootRadius,
    pitchDiameter: 2 * size.pitchRadius,
    wholeDepth: Math.abs(tip - size.rootRadius),
    thickness: size.thickness,
    ...(outside
      ? { chord: chordOf(size.pitchRadius, tip, size.thickness), overTips: overTips(wheel.teeth, tip, land) }
      : {}),
    ...(outside && wheel.form === 'involute' ? involuteSizes(wheel, size, movement) : {}),
    leastRim: leastRim(wheel, movement),
    cutter: cutterOf(wheel, movement),
    dividing,
    nearest: dividing.some(isPlain) ? [] : nearWays(wheel.teeth, kit),
    checkOff: checkOffList(wheel.teeth, options.tableRatio ?? 90),
    cautions: CUTTING_CAUTIONS,
    warns: form.kind === 'none' ? [form.says] : form.warns,
  };
}

const isPlain = (way: DividingWay): boolean => way.kind === 'direct' || way.kind === 'simple';

function involuteSizes(wheel: Wheel, size: WheelSize, movement: Movement): { span: Span; pins?: OverPins } {
  const teeth = {
    teeth: wheel.teeth,
    module: size.module,
    alpha: rackOf(wheel, movement).alpha,
    thickness: size.thickness,
  };
  const pin = pinOnPitchCircle(teeth);
  // A pin to a tenth of a millimetre that stands a little proud: makers use the shank of a drill or a needle.
  const pins = sizeOverPins(teeth, Math.max(pin, Math.ceil(pin * 10) / 10));
  return { span: spanOver(teeth, usualSpan(teeth)), ...(pins ? { pins } : {}) };
}

/** One wheel in lines of text. */
export function textOfCutting(data: CuttingData): string {
  const lines = [
    `${data.name}: ${data.teeth} teeth, ${data.size} (${data.source})`,
    `  blank Ø ${mm(data.blankDiameter)}, depth ${mm(data.wholeDepth)}, roots Ø ${mm(data.rootDiameter)}, pitch circle Ø ${mm(data.pitchDiameter)}, rim at least ${mm(data.leastRim)} mm inside the roots`,
    `  tooth ${mm(data.thickness)} mm on the pitch circle${data.chord ? `; chord ${mm(data.chord.thickness)} at ${mm(data.chord.height)} below the tip` : ''}`,
  ];
  if (data.span)
    lines.push(
      `  over ${data.span.over} ${data.span.over === 1 ? 'tooth' : 'teeth'} ${mm(data.span.length)} mm (touches at Ø ${mm(data.span.touches)})`,
    );
  if (data.pins) lines.push(`  over two pins of Ø ${mm(data.pins.pin)}: ${mm(data.pins.size)} mm`);
  if (data.overTips && data.overTips.add > 0) {
    lines.push(`  callipers over the tips read ${mm(data.overTips.reads)}: an odd count, add ${mm(data.overTips.add)}`);
  }
  lines.push(`  cutter: ${data.cutter.says}`);
  for (const way of data.dividing) lines.push(`  ${way.says}`);
  if (data.nearest.length > 0) {
    const exact = data.dividing.length > 0 ? 'only exactly as above' : 'not exactly at all';
    lines.push(`  ${data.teeth} has no direct or simple division with these plates, ${exact}; the nearest ways:`);
    for (const way of data.nearest.slice(0, 4)) lines.push(`    ${way.says}`);
  }
  for (const warning of data.warns) lines.push(`  ! ${warning}`);
  return lines.join('\n');
}

/** The check-off list of one wheel: a line a tooth, every tenth boxed, closing to the full turn. */
export function textOfCheckOff(data: CuttingData): string {
  const lines = data.checkOff.map(({ tooth, angle, turns, beyond, boxed }) => {
    const label = tooth === data.teeth ? 'closes' : String(tooth);
    const line = `${label.padStart(7)}  ${angle.padStart(13)}   ${String(turns).padStart(3)} turns + ${beyond.padStart(11)}   ( )`;
    return boxed ? `${line} [${tooth}]` : line;
  });
  return [`${data.name}, ${data.teeth} teeth`, ...lines].join('\n');
}
