/** The record of readings: blank boxes for what will be measured, beside what is wanted. */

import { type PartSize, partSizes } from '../../made/index.ts';
import { holesOf, namer, platesOf } from '../../marking/index.ts';
import { decimalLengthText } from '../../movement/decimal.ts';
import type { Movement } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { calculatedDepth } from '../../teeth/index.ts';
import type { Column, Table } from './tablePages.ts';

const box = (head: string, weight = 1.4): Column => ({ head, weight, box: true });
const figure = (head: string): Column => ({ head, weight: 1.3, align: 'right' });
const GAUGE_AND_DATE = [box('Gauge'), box('Date', 1.2)];

/** Depths, wheels as cut, pivots with the holes they run in, and holes as drilled. */
export function readingTables(placed: PlacedMovement): readonly Table[] {
  const { movement } = placed;
  const sizes = partSizes(movement);
  const tables = [depthTable(placed), wheelTable(movement, sizes), pivotTable(movement, sizes), placeTable(placed)];
  return tables.filter(({ rows }) => rows.length > 0);
}

function depthTable({ movement, rules }: PlacedMovement): Table {
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const label = namer(movement);
  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  const rows = movement.rules.flatMap((rule) => {
    if (rule.kind !== 'depth') return [];
    const [a, b] = rule.wheels.map((id) => wheels.get(id));
    if (!a || !b) return [];
    const calculated = calculatedDepth(a, b, movement).distance;
    const used = rules.get(rule.id)?.length ?? calculated;
    const before = rule.measured ? show(rule.measured.value) : '';
    const pair = `${label(a.arbor)} ${a.teeth} : ${b.teeth} ${label(b.arbor)}`;
    return [[pair, show(calculated), show(used), before, '', '', '']];
  });
  return {
    heading: 'Depths',
    note: 'Write what the depthing tool gives, with the gauge and the day. Tight or free over the turn goes beside the reading.',
    columns: [
      { head: 'Pair', weight: 3.4 },
      ...[figure('Calculated'), figure('Used'), figure('Measured')],
      ...[box('Reading', 1.8), ...GAUGE_AND_DATE],
    ],
    rows,
  };
}

function wheelTable(movement: Movement, sizes: readonly PartSize[]): Table {
  const label = namer(movement);
  const wanted = wantedOf(movement, sizes);
  const rows = movement.wheels.map(({ id }) => [
    label(id),
    ...[wanted(id, 'tipDiameter'), '', wanted(id, 'thickness'), '', '', '', ''],
  ]);
  return {
    heading: 'Wheels as cut',
    note: 'Diameter over the tips, thickness and run-out of the teeth as found.',
    columns: [
      { head: 'Wheel', weight: 3.4 },
      ...[figure('Tips'), box('Tips read'), figure('Thick'), box('Thick read'), box('Run-out')],
      ...GAUGE_AND_DATE,
    ],
    rows,
  };
}

function pivotTable(movement: Movement, sizes: readonly PartSize[]): Table {
  const label = namer(movement);
  const wanted = wantedOf(movement, sizes);
  const rows = movement.arbors.flatMap(({ id, bearings }) =>
    bearings.map(({ plate }, index) => {
      const where = plate === undefined ? `bearing ${index + 1}` : label(plate);
      const [pivot, hole] = [wanted(id, 'pivot', index), wanted(id, 'bore', index)];
      return [`${label(id)}, ${where}`, pivot, '', hole, '', '', ''];
    }),
  );
  return {
    heading: 'Pivots and their holes',
    note: 'Diameters as turned and as opened or reamed.',
    columns: [
      { head: 'Bearing', weight: 3.4 },
      ...[figure('Pivot'), box('Pivot read'), figure('Hole'), box('Hole read')],
      ...GAUGE_AND_DATE,
    ],
    rows,
  };
}

function placeTable(placed: PlacedMovement): Table {
  const { movement, places } = placed;
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const label = namer(movement);
  const first = new Set(
    platesOf(movement).flatMap((plate) => holesOf(placed, plate).flatMap(({ points }) => points.slice(0, 1))),
  );
  const rows = [...places.values()].flatMap(({ id, x, y }) =>
    first.has(id) ? [[label(id), show(x), show(y), '', '', '', '']] : [],
  );
  return {
    heading: 'Holes as drilled',
    note: 'x to the right and y up from the zero of the movement, seen from above.',
    columns: [
      { head: 'Hole', weight: 3.4 },
      ...[figure('x'), figure('y'), box('x read'), box('y read')],
      ...GAUGE_AND_DATE,
    ],
    rows,
  };
}

/** What the drawing or the standard wants of a size, as it is printed; nothing where the part has no such size. */
function wantedOf({ display }: Movement, sizes: readonly PartSize[]) {
  const keyOf = (part: string, field: string, bearing?: number): string => `${part} ${field} ${bearing ?? ''}`;
  const drawn = new Map(sizes.map((each) => [keyOf(each.part, each.field, each.bearing), each.drawn]));
  return (part: string, field: PartSize['field'], bearing?: number): string => {
    const value = drawn.get(keyOf(part, field, bearing));
    return value === undefined ? '' : decimalLengthText(value, display);
  };
}
