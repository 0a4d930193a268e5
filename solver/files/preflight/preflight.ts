/**
 * The pre-flight report: each file is read back by a reader of its own and told in numbers, before it goes to a machine.
 */

import { decimalFixed } from '../../movement/decimal.ts';
import { GAUGE } from '../../tolerances.ts';
import type { FileFormat, FormatName } from '../formats/format.ts';
import { formatOf } from '../formats/formats.ts';
import { type Found, type FoundHole, NOTHING_FOUND } from './found.ts';

/** What one file holds when it is read back, and the report of it. */
export interface Preflight extends Found {
  readonly fileName: string;
  readonly format: FormatName;
  /** The report as text, a sentence a line. */
  readonly says: string;
}

/** A file by what its maker says of it: nothing is read out of its name. */
export interface FileToCheck {
  readonly name: string;
  readonly format: FormatName;
  readonly text: string;
}

/** What a file should hold, for comparison. */
export interface ExpectedSheet {
  /** Width and height of what is cut, mm. */
  readonly size?: readonly [number, number];
  readonly holes?: readonly { readonly x: number; readonly y: number }[];
}

/** Reads one file back with the reader of its format. */
export function preflight(file: FileToCheck, expected?: ExpectedSheet): Preflight {
  const format = formatOf(file.format);
  const found = format.readBack?.(file.text) ?? NOTHING_FOUND;
  const problems = [...found.problems, ...(expected ? differences(found, expected, format) : [])];
  const report = { ...found, fileName: file.name, format: file.format, problems };
  return { ...report, says: sentences(report, format).join('\n') };
}

/** Factors by which files come out wrong, with their cause (practice: inch and mm, points and pixels an inch, scaled prints). */
const FACTORS: readonly (readonly [number, string])[] = [
  [25.4, 'inches read as millimetres'],
  [1 / 25.4, 'millimetres read as inches'],
  [96 / 25.4, 'millimetres as 96 pixels an inch'],
  [25.4 / 96, '96 pixels an inch read as millimetres'],
  [72 / 25.4, 'millimetres as points'],
  [90 / 96, '90 pixels an inch against 96'],
  [72 / 96, 'points against pixels'],
  [1.25, '72 pixels an inch against 90'],
  [1000, 'metres against millimetres'],
  [10, 'centimetres against millimetres'],
];
/** Half a unit of the third decimal: sizes are compared as printed. */
const SIZE_TOLERANCE = 5e-4;

function differences(found: Found, expected: ExpectedSheet, { holds }: FileFormat): readonly string[] {
  const problems: string[] = [];
  const { extents } = found;
  if (holds === 'drawing' && extents && expected.size) {
    const [wantedWidth, wantedHeight] = expected.size;
    const width = extents[2] - extents[0];
    const height = extents[3] - extents[1];
    if (Math.abs(width - wantedWidth) > SIZE_TOLERANCE || Math.abs(height - wantedHeight) > SIZE_TOLERANCE) {
      const factor = FACTORS.find(([value]) => Math.abs(width / wantedWidth / value - 1) < 1e-3);
      const cause = factor ? ` (${factor[1]}: factor ${decimalFixed(factor[0], 4)})` : '';
      problems.push(
        `size ${decimalFixed(width, 3)} × ${decimalFixed(height, 3)} mm, expected ${decimalFixed(wantedWidth, 3)} × ${decimalFixed(wantedHeight, 3)}${cause}`,
      );
    }
  }
  if (expected.holes && holds !== 'nothing to check') problems.push(...holeDifferences(found.holes, expected.holes));
  return problems;
}

function holeDifferences(
  found: readonly FoundHole[],
  expected: NonNullable<ExpectedSheet['holes']>,
): readonly string[] {
  if (found.length !== expected.length) return [`${found.length} holes, expected ${expected.length}`];
  const missing = expected.filter(
    (hole) => !found.some((each) => Math.hypot(each.x - hole.x, each.y - hole.y) <= GAUGE),
  );
  return missing.map((hole) => `no hole at ${decimalFixed(hole.x, 3)}, ${decimalFixed(hole.y, 3)}`);
}

function sentences(report: Omit<Preflight, 'says'>, { holds }: FileFormat): readonly string[] {
  const { extents } = report;
  const lines = [`${report.fileName}: ${report.problems.length === 0 ? 'fine' : 'look at this before cutting'}.`];
  if (extents) {
    const size = `${decimalFixed(extents[2] - extents[0], 3)} × ${decimalFixed(extents[3] - extents[1], 3)} mm`;
    lines.push(`Extents ${size}, from ${decimalFixed(extents[0], 3)}, ${decimalFixed(extents[1], 3)}.`);
  }
  if (holds === 'drawing') {
    lines.push(
      `${report.closedLoops} closed loops, ${report.openEnds} open ends, ${report.gaps.length} gaps, ${report.doubles} doubles.`,
    );
  }
  if (holds !== 'nothing to check') {
    const least = report.smallestHole === undefined ? '' : `, the smallest ${decimalFixed(report.smallestHole, 3)} mm`;
    lines.push(`${report.holes.length} holes${least}.`);
  }
  return [...lines, ...report.problems.map((problem) => `Problem: ${problem}.`)];
}
