/** How a wheel is cut: which cutter, the numbers of a wheel in lines of text, and its check-off list. */
import type { CutterChoice, CuttingData } from '../../teeth/cutting/index.ts';
import { asSentence, counted } from '../lists.ts';
import { type Sentences, sentenceOf } from '../saying.ts';
import type { Speaker } from '../speaker.ts';
import { dividingWaySays, nearWaySays } from './dividingWords.ts';
import { diameterSays, sizeSays } from './sizeWords.ts';
import { teethSay } from './toothWords.ts';

/** The usual cautions of cutting; the sheet carries them once. */
export const CUTTING_CAUTIONS: readonly string[] = [
  'Cutting tools and flying chips injure: guard the cutter, wear eye protection, clamp the work, and follow the machine maker and local rules.',
  'Cut one space and the next, measure a tooth, then go round. Approach every division from one side.',
];

const CUTTERS: Sentences<CutterChoice> = {
  involute: ({ size, pressureAngle, range }, speaker) => {
    const teeth = range.to === undefined ? `${range.from} teeth to rack` : `${range.from} to ${range.to} teeth`;
    const inches = `No. ${range.diametralPitchNumber} of a diametral-pitch set`;
    const numbers =
      range.moduleNumber === undefined
        ? `${inches}, where it has one`
        : `${inches}, No. ${range.moduleNumber} of most module sets`;
    return `${sizeSays(size, speaker)}, ${speaker.plain((pressureAngle * 180) / Math.PI)}°: the cutter marked ${teeth} (${numbers}; go by the range).`;
  },
  noFormCutter: ({ teeth }) =>
    `No form cutter of the usual sets cuts ${counted(teeth, 'tooth', 'teeth')} (they begin at 12, some at 10): hob it, or grind a flycutter.`,
  clockWheel: ({ size, family }, speaker) => `${sizeSays(size, speaker)} wheel cutter (${family}).`,
  clockLeaf: ({ size, teeth, leaves, exact, oldWork }, speaker) => {
    const near = exact ? '' : ` There is none for ${teeth} leaves: it is the nearest below; test it on a spare blank.`;
    return `${sizeSays(size, speaker)} pinion cutter for ${leaves} leaves.${near} For old work with thick leaves a cutter of module ${speaker.number(oldWork, 2)} is advised.`;
  },
  trundles: () => 'No cutter: drill the shrouds for the trundles.',
  vCutter: ({ angle, space }, speaker) =>
    `A V-shaped cutter or file of ${speaker.plain((angle * 180) / Math.PI)}° between its sides, less the turn of one space (${speaker.angle(space, 2)}).`,
  ring: () => 'A ring: cut with a shaper cutter or a flycutter ground to the space.',
};

/** The cutter for a wheel, with its size and range; begins in the small letter of a size where one stands first. */
export function cutterSays(cutter: CutterChoice, speaker: Speaker): string {
  return sentenceOf(CUTTERS, cutter, speaker);
}

/** How teeth are measured: over the chord, over several, over pins, over the tips. */
function measuringLines(data: CuttingData, speaker: Speaker): string[] {
  const { length } = speaker;
  const { chord, span, pins, overTips } = data;
  const below = chord ? `; chord ${length(chord.thickness)} at ${length(chord.height)} below the tip` : '';
  const lines = [`  tooth ${length(data.thickness)} on the pitch circle${below}`];
  if (span) {
    const touches = diameterSays(span.touches, speaker);
    lines.push(`  over ${counted(span.over, 'tooth', 'teeth')} ${length(span.length)} (touches at ${touches})`);
  }
  if (pins) lines.push(`  over two pins of ${diameterSays(pins.pin, speaker)}: ${length(pins.size)}`);
  if (overTips && overTips.add > 0) {
    lines.push(`  callipers over the tips read ${length(overTips.reads)}: an odd count, add ${length(overTips.add)}`);
  }
  return lines;
}

/** Most near ways that are written down: the best of each kind of head. */
const MOST_NEAR = 4;

function dividingLines({ teeth, dividing, nearest }: CuttingData, speaker: Speaker): string[] {
  const exact = dividing.map((way) => `  ${dividingWaySays(way, speaker)}`);
  if (nearest.length === 0) return exact;
  const how = dividing.length > 0 ? 'only exactly as above' : 'not exactly at all';
  return [
    ...exact,
    `  ${teeth} has no direct or simple division with these plates, ${how}; the nearest ways:`,
    ...nearest.slice(0, MOST_NEAR).map((way) => `    ${nearWaySays(way, speaker)}`),
  ];
}

/** The numbers of one wheel in lines of text. */
export function cuttingLines(data: CuttingData, speaker: Speaker): readonly string[] {
  const { length, name } = speaker;
  const circle = (diameter: number): string => diameterSays(diameter, speaker);
  return [
    `${asSentence(name(data.wheel))}: ${counted(data.teeth, 'tooth', 'teeth')}, ${sizeSays(data.size, speaker)} (${data.source})`,
    `  blank ${circle(data.blankDiameter)}, depth ${length(data.wholeDepth)}, roots ${circle(data.rootDiameter)}, pitch circle ${circle(data.pitchDiameter)}, rim at least ${length(data.leastRim)} inside the roots`,
    ...measuringLines(data, speaker),
    `  cutter: ${cutterSays(data.cutter, speaker)}`,
    ...dividingLines(data, speaker),
    ...data.doubts.map((doubt) => `  ! ${teethSay(doubt, speaker)}`),
  ];
}

/** The check-off list of one wheel: a line a tooth, every tenth boxed, closing to the full turn. */
export function checkOffLines(data: CuttingData, { name }: Speaker): readonly string[] {
  const lines = data.checkOff.map(({ tooth, angle, turns, beyond, boxed }) => {
    const label = tooth === data.teeth ? 'closes' : String(tooth);
    const words = turns === 1 ? ' turn' : 'turns';
    const line = `${label.padStart(7)}  ${angle.padStart(13)}   ${String(turns).padStart(3)} ${words} + ${beyond.padStart(11)}   ( )`;
    return boxed ? `${line} [${tooth}]` : line;
  });
  return [`${asSentence(name(data.wheel))}, ${counted(data.teeth, 'tooth', 'teeth')}`, ...lines];
}

/**
 * Numbers, cautions and check-off list of one wheel, ready to print and take to the machine.
 *
 * @param tableRatio turns of the handle for one turn of the table, as the data was worked out for
 */
export function cuttingSheet(data: CuttingData, tableRatio: number, speaker: Speaker): string {
  const blocks = [
    cuttingLines(data, speaker),
    CUTTING_CAUTIONS.map((caution) => `! ${caution}`),
    [`Rotary table of ${tableRatio}:1, one line a tooth, every tenth boxed:`],
    checkOffLines(data, speaker),
  ];
  return `${blocks.map((lines) => lines.join('\n')).join('\n\n')}\n\n`;
}
