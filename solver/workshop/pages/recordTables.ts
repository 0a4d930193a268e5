/** Tables for the bench: the steps in short, all distances between holes, and the record of readings with blank boxes. */
import { calculatedDepth } from '../../gearing/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Hole } from '../drawing.ts';
import { labelsOf } from '../plateView.ts';
import type { MarkingPlan } from '../steps/markingSteps.ts';
import { checkWords, locusWords } from '../steps/stepWords.ts';
import { distanceTable } from '../ways/betweenHoles.ts';
import { lengthText } from '../write/decimal.ts';
import type { Table } from './tablePages.ts';

/** What is needed to strike the points, a line a step. */
export function stepsTable({ steps, voice, datumSays }: MarkingPlan): Table {
  const rows = steps.map((step) => [
    String(step.number),
    step.label,
    step.kind === 'same'
      ? 'nothing to strike: the place is there'
      : step.kind === 'unsettled'
        ? 'not settled: no mark'
        : step.loci.map((locus) => locusWords(locus, voice)).join('; ') ||
          (step.kind === 'already' ? 'already on the metal' : 'datum'),
    step.crossing ?? '',
    step.check ? checkWords(step.check, voice).replace(/^Check: |\.$/g, '') : '',
    '',
  ]);
  return {
    heading: 'Points in order',
    note: datumSays,
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
  const show = (mm: number) => lengthText(mm, placed.movement.display);
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

/** Blank boxes for what will be measured: depths, blanks, and distances between neighbouring holes. */
export function readingTables(placed: PlacedMovement): readonly Table[] {
  const { movement } = placed;
  const show = (mm: number) => lengthText(mm, movement.display);
  const label = labelsOf(movement);
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const depths = movement.rules.flatMap((rule) => {
    if (rule.kind !== 'depth') return [];
    const [a, b] = rule.wheels.map((id) => wheels.get(id));
    if (!a || !b) return [];
    const calculated = calculatedDepth(a, b, movement).distance;
    const used = placed.rules.get(rule.id)?.length ?? calculated;
    const before = rule.measured ? show(rule.measured.value) : '';
    return [
      [`${label(a.arbor)} ${a.teeth} : ${b.teeth} ${label(b.arbor)}`, show(calculated), show(used), before, '', '', ''],
    ];
  });
  const made = movement.wheels.map((wheel) => [
    `${wheel.name ?? wheel.id} on ${label(wheel.arbor)}`,
    '',
    wheel.tipDiameter === undefined ? '' : show(wheel.tipDiameter),
    '',
    '',
    '',
    '',
  ]);
  const boxes = [
    { head: 'Reading', weight: 1.8, box: true },
    { head: 'Gauge', weight: 1.5, box: true },
    { head: 'Date', weight: 1.3, box: true },
  ];
  const tables: Table[] = [
    {
      heading: 'Depths',
      note: 'Write what the depthing tool gives, with the gauge and the day. Tight or free over the turn goes beside the reading.',
      columns: [
        { head: 'Pair', weight: 3.4 },
        { head: 'Calculated', weight: 1.3, align: 'right' },
        { head: 'Used', weight: 1.3, align: 'right' },
        { head: 'Measured', weight: 1.3, align: 'right' },
        ...boxes,
      ],
      rows: depths,
    },
    {
      heading: 'Wheels as cut',
      note: 'Diameter over the tips, thickness and run-out as found.',
      columns: [
        { head: 'Wheel', weight: 3.4 },
        { head: '', weight: 0.2 },
        { head: 'Tips before', weight: 1.3, align: 'right' },
        { head: 'Run-out', weight: 1.3, box: true },
        ...boxes,
      ],
      rows: made,
    },
  ];
  return tables.filter((table) => table.rows.length > 0);
}
