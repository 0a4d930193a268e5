/** The comments at the head of a drill program: what it is, its zero, its tools and the cautions. */

import type { Hole } from '../../marking/index.ts';
import { decimalFixed } from '../../movement/decimal.ts';
import { GAUGE } from '../../tolerances.ts';
import type { DrillPass } from './drillPasses.ts';
import { bottomOf, feedOf, type SettledDrill, speedOf, word } from './drillWords.ts';

/** Longest comment: simple controllers cut or refuse long lines (common practice: 80 characters with the brackets). */
const COMMENT_WIDTH = 72;

/**
 * Comments that no controller can trip over or acts on: capitals, digits, blanks and . : + - / = alone, in short lines.
 * Percent signs end programs, semicolons end blocks, commas make commands of comments, # names a parameter (RS-274
 * dialects); brackets, quotes and signs of money are left out with them.
 */
export function comments(text: string): string[] {
  const plain = text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/\u2212/g, '-')
    .replace(/\s*[,;]\s*/g, ' - ')
    .replace(/[^A-Z0-9 .:+\-/=]/g, ' ');
  const lines: string[] = [];
  let line = '';
  for (const piece of plain.split(/\s+/).filter((each) => each !== '')) {
    if (line !== '' && line.length + 1 + piece.length > COMMENT_WIDTH) {
      lines.push(`(${line})`);
      line = piece;
    } else line = line === '' ? piece : `${line} ${piece}`;
  }
  return [...lines, `(${line.slice(0, COMMENT_WIDTH)})`];
}

/** The first line of a comment. */
export const comment = (text: string): string => comments(text)[0] ?? '()';

/** The head of the program. */
export function headerLines(holes: readonly Hole[], passes: readonly DrillPass[], settled: SettledDrill): string[] {
  const xs = holes.map((hole) => hole.x - settled.zero[0]);
  const ys = holes.map((hole) => hole.y - settled.zero[1]);
  const span = (values: readonly number[]) =>
    values.length === 0 ? 'none' : `${word(least(values), settled)} TO ${word(-least(values.map((v) => -v)), settled)}`;
  return [
    '%',
    ...[
      settled.title,
      settled.face,
      ...settled.buildable,
      `Units ${settled.units}. X0 Y0 is ${settled.zeroSays}.`,
      `Z0 is the face of the plate. Tools travel at Z ${word(settled.safeHeight, settled)}.`,
      depthSays(settled),
      `Holes ${holes.length}. X ${span(xs)}. Y ${span(ys)}.`,
      ...passes.map((pass) => toolSays(pass, settled)),
      ...underSizeSays(passes, settled),
      ...CAUTIONS,
    ].flatMap(comments),
  ];
}

const least = (values: readonly number[]): number => values.reduce((a, b) => Math.min(a, b));

function depthSays(settled: SettledDrill): string {
  const beyond = -bottomOf('drill', settled) - settled.thickness;
  const [deep, thick] = [word(-bottomOf('drill', settled), settled), word(settled.thickness, settled)];
  return beyond >= 0
    ? `Drills go ${deep} deep; the plate is ${thick} thick: ${word(beyond, settled)} beyond it.`
    : `Drills stop ${deep} deep; the plate is ${thick} thick: the holes do not go through.`;
}

function toolSays(pass: DrillPass, settled: SettledDrill): string {
  const { work, diameter, holes, tool } = pass;
  const name =
    work === 'spot' ? 'spotting drill' : `${work === 'drill' ? 'drill' : 'reamer'} diameter ${word(diameter, settled)}`;
  const count = holes.length === 1 ? '1 hole' : `${holes.length} holes`;
  return `T${tool} ${name}: ${count}; speed ${decimalFixed(speedOf(pass, settled), 0)}; feed ${word(feedOf(pass, settled), settled)} a minute`;
}

/** Holes that the program leaves smaller than they must be. */
function underSizeSays(passes: readonly DrillPass[], settled: SettledDrill): string[] {
  const reamed = new Set(passes.flatMap(({ work, holes }) => (work === 'ream' ? holes : [])));
  const under = passes
    .filter(({ work }) => work === 'drill')
    .flatMap(({ holes, diameter }) =>
      holes.filter((hole) => !reamed.has(hole) && hole.diameter - diameter > GAUGE).map((hole) => ({ hole, diameter })),
    );
  return under.map(
    ({ hole, diameter }) =>
      `${hole.label} is left at ${word(diameter, settled)}: open it to ${word(hole.diameter, settled)} by hand.`,
  );
}

const CAUTIONS: readonly string[] = [
  'CAUTION: read this program and run it in the air above the work before cutting.',
  'Clamp the plate on waste; keep clamps clear of the path.',
  'Check tool numbers; tool lengths and the work zero.',
  'Feeds and speeds are starting values: set them for your metal and tools.',
  'Guard the machine. Wear eye protection. No gloves or loose sleeves near a spindle.',
  'Local codes; the instructions of the maker of the machine; and licensed or trained practice come first.',
  'Some ISO 6983 controllers use G70 and G71 for inch and mm: check what G20 and G21 mean on yours.',
];
