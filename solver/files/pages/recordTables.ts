/** Tables for the bench: the steps in short, and all distances between holes. */

import type { Hole, MarkingPlan } from '../../marking/index.ts';
import { distanceTable } from '../../marking/ways/index.ts';
import { decimalLengthText } from '../../movement/decimal.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { SheetWords } from '../sheetWords.ts';
import type { Table } from './tablePages.ts';

/** What is needed to strike the points, a line a step. */
export function stepsTable(plan: MarkingPlan, words: SheetWords): Table {
  const rows = plan.steps.map((step) => [
    String(step.number),
    step.label,
    step.kind === 'same'
      ? 'nothing to strike: the place is there'
      : step.kind === 'unsettled'
        ? 'not settled: no mark'
        : step.loci.map((locus) => words.locus(locus, plan)).join('; ') ||
          (step.kind === 'already' ? 'already on the metal' : 'datum'),
    step.crossing ? words.crossing(step.crossing) : '',
    step.check ? words.check(step.check) : '',
    '',
  ]);
  return {
    heading: 'Points in order',
    note: words.datum(plan),
    columns: [
      { head: 'Step', weight: 0.7, align: 'right', bold: true },
      { head: 'Point', weight: 2, bold: true },
      { head: 'Settings', weight: 4.2 },
      { head: 'Crossing', weight: 3 },
      { head: 'Check', weight: 2.2 },
      { head: 'Done', weight: 0.9, box: true },
    ],
    rows,
  };
}

/** Most columns of one block of the distance table. */
const BLOCK = 11;

/** Distances between all pairs, in blocks of columns; each pair stands once, below the diagonal. */
export function distanceTables(placed: PlacedMovement, holes: readonly Hole[]): readonly Table[] {
  const distances = distanceTable(holes);
  const show = (mm: number) => decimalLengthText(mm, placed.movement.display);
  const tables: Table[] = [];
  const columns = holes.length - 1;
  // As many blocks as are needed, all about as wide.
  const wide = Math.ceil(columns / Math.max(1, Math.ceil(columns / BLOCK)));
  for (let first = 0; first < columns; first += wide) {
    const own = holes.slice(first, Math.min(first + wide, columns));
    const rows = holes.slice(first + 1).map((hole, below) => {
      const index = first + 1 + below;
      return [
        hole.label,
        ...own.map((_, column) => (first + column < index ? show(distances[index]?.[first + column] ?? 0) : '')),
      ];
    });
    tables.push({
      heading: 'Distances between holes',
      ...(first === 0
        ? { note: 'Centre to centre. Over two pins: add half of both diameters; inside: take them off.' }
        : {}),
      columns: [
        { head: '', weight: 2.2, bold: true },
        ...own.map((hole) => ({ head: hole.label, weight: 1.6, align: 'right' as const })),
      ],
      rows,
    });
  }
  return tables;
}
