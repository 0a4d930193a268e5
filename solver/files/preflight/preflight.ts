/**
 * The pre-flight report: each file is read back by a reader of its own and told in numbers, before it goes to a machine.
 */

import { fixed } from '../../movement/decimal.ts';
import { GAUGE } from '../../tolerances.ts';
import { jointsOf } from './loops.ts';
import { readDrill } from './readDrill.ts';
import { readDxf } from './readDxf.ts';
import { boundsOfRead, type ReadDrawing } from './readShapes.ts';
import { readSvg } from './readSvg.ts';
import { readHoleTable } from './readTable.ts';

/** A hole that a file makes, mm. */
export interface FoundHole {
  readonly x: number;
  readonly y: number;
  /** mm; undefined in a drill program, which only knows tools. */
  readonly diameter: number | undefined;
}

/** What one file holds when it is read back. */
export interface Preflight {
  readonly fileName: string;
  readonly kind: 'dxf' | 'svg' | 'drill' | 'table' | 'other';
  /** [minX, minY, maxX, maxY] of everything that is cut, mm. */
  readonly extents?: readonly [number, number, number, number];
  readonly closedLoops: number;
  readonly openEnds: number;
  readonly gaps: readonly number[];
  readonly doubles: number;
  readonly smallestHole?: number;
  readonly holes: readonly FoundHole[];
  readonly layers: readonly string[];
  /** Everything that should be looked at; empty when the file is fine. */
  readonly problems: readonly string[];
  /** The report as text, a sentence a line. */
  readonly says: string;
}

/** What a file should hold, for comparison. */
export interface Expected {
  /** Width and height of what is cut, mm. */
  readonly size?: readonly [number, number];
  readonly holes?: readonly { readonly x: number; readonly y: number }[];
}

/** Layers that a machine cuts; on the others open ends are no fault. */
const CUT_LAYERS = new Set(['OUTLINE', 'HOLES', 'OPENINGS', 'TEETH']);

/** Reads one file back, by the ending of its name. */
export function preflight(fileName: string, text: string, expected?: Expected): Preflight {
  const kind = kindOf(fileName);
  const found =
    kind === 'dxf' || kind === 'svg'
      ? drawingReport(kind === 'dxf' ? readDxf(text) : readSvg(text))
      : listReport(kind, text);
  const problems = [...found.problems, ...(expected ? differences(found, expected, kind) : [])];
  const report = { ...found, fileName, kind, problems };
  return { ...report, says: sentences(report).join('\n') };
}

function kindOf(fileName: string): Preflight['kind'] {
  const ending = fileName.slice(fileName.lastIndexOf('.') + 1).toLowerCase();
  if (ending === 'dxf' || ending === 'svg') return ending;
  if (ending === 'ngc' || ending === 'nc') return 'drill';
  return ending === 'csv' ? 'table' : 'other';
}

type Found = Omit<Preflight, 'fileName' | 'kind' | 'says'>;
const NONE = { closedLoops: 0, openEnds: 0, gaps: [], doubles: 0, holes: [], layers: [], problems: [] } as const;

function drawingReport(drawing: ReadDrawing): Found {
  const cut = drawing.shapes.filter((shape) => CUT_LAYERS.has(shape.layer));
  const joints = jointsOf(cut);
  const holes = cut.flatMap((shape) =>
    shape.kind === 'circle' && shape.layer === 'HOLES'
      ? [{ x: shape.centre[0], y: shape.centre[1], diameter: 2 * shape.radius }]
      : [],
  );
  const problems = [...drawing.problems];
  if (joints.openEnds > 0) problems.push(`${joints.openEnds} open ends on the cut layers`);
  if (joints.gaps.length > 0) {
    problems.push(`${joints.gaps.length} small gaps, the least ${fixed(joints.gaps[0] ?? 0, 4)} mm`);
  }
  if (joints.doubles > 0) problems.push(`${joints.doubles} pieces are drawn twice`);
  if (drawing.unit !== undefined && drawing.unit !== 1) problems.push(`the unit is ${drawing.unit} mm`);
  const extents = boundsOfRead(cut);
  return { ...joints, holes, layers: drawing.layers, problems, ...(extents ? { extents } : {}), ...smallest(holes) };
}

function smallest(holes: readonly FoundHole[]): { smallestHole?: number } {
  const sizes = holes.flatMap((hole) => (hole.diameter === undefined ? [] : [hole.diameter]));
  return sizes.length === 0 ? {} : { smallestHole: Math.min(...sizes) };
}

function listReport(kind: Preflight['kind'], text: string): Found {
  if (kind === 'other') return NONE;
  if (kind === 'table') {
    const { holes, problems } = readHoleTable(text);
    return { ...NONE, holes, problems, ...spread(holes), ...smallest(holes) };
  }
  const { holes, problems } = readDrill(text);
  const first = holes.filter((hole) => hole.tool === holes[0]?.tool);
  const places = first.map(({ x, y }) => ({ x, y, diameter: undefined }));
  return { ...NONE, holes: places, problems, ...spread(places) };
}

function spread(holes: readonly FoundHole[]): Pick<Found, 'extents'> | Record<string, never> {
  const shapes = holes.map(({ x, y }) => ({ kind: 'line', layer: '', from: [x, y], to: [x, y] }) as const);
  const extents = boundsOfRead(shapes);
  return extents ? { extents } : {};
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

function differences(found: Found, expected: Expected, kind: Preflight['kind']): readonly string[] {
  const problems: string[] = [];
  const { extents } = found;
  const isDrawing = kind === 'dxf' || kind === 'svg';
  if (isDrawing && extents && expected.size) {
    const [wantedWidth, wantedHeight] = expected.size;
    const width = extents[2] - extents[0];
    const height = extents[3] - extents[1];
    if (Math.abs(width - wantedWidth) > SIZE_TOLERANCE || Math.abs(height - wantedHeight) > SIZE_TOLERANCE) {
      const factor = FACTORS.find(([value]) => Math.abs(width / wantedWidth / value - 1) < 1e-3);
      const cause = factor ? ` (${factor[1]}: factor ${fixed(factor[0], 4)})` : '';
      problems.push(
        `size ${fixed(width, 3)} × ${fixed(height, 3)} mm, expected ${fixed(wantedWidth, 3)} × ${fixed(wantedHeight, 3)}${cause}`,
      );
    }
  }
  if (expected.holes && kind !== 'other') problems.push(...holeDifferences(found.holes, expected.holes));
  return problems;
}

function holeDifferences(found: readonly FoundHole[], expected: NonNullable<Expected['holes']>): readonly string[] {
  if (found.length !== expected.length) return [`${found.length} holes, expected ${expected.length}`];
  const missing = expected.filter(
    (hole) => !found.some((each) => Math.hypot(each.x - hole.x, each.y - hole.y) <= GAUGE),
  );
  return missing.map((hole) => `no hole at ${fixed(hole.x, 3)}, ${fixed(hole.y, 3)}`);
}

function sentences(report: Omit<Preflight, 'says'>): readonly string[] {
  const { extents, kind } = report;
  const lines = [`${report.fileName}: ${report.problems.length === 0 ? 'fine' : 'look at this before cutting'}.`];
  if (extents) {
    const size = `${fixed(extents[2] - extents[0], 3)} × ${fixed(extents[3] - extents[1], 3)} mm`;
    lines.push(`Extents ${size}, from ${fixed(extents[0], 3)}, ${fixed(extents[1], 3)}.`);
  }
  if (kind === 'dxf' || kind === 'svg') {
    lines.push(
      `${report.closedLoops} closed loops, ${report.openEnds} open ends, ${report.gaps.length} gaps, ${report.doubles} doubles.`,
    );
  }
  if (kind !== 'other') {
    const least = report.smallestHole === undefined ? '' : `, the smallest ${fixed(report.smallestHole, 3)} mm`;
    lines.push(`${report.holes.length} holes${least}.`);
  }
  return [...lines, ...report.problems.map((problem) => `Problem: ${problem}.`)];
}
