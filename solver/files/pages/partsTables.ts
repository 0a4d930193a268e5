/** The parts list as tables: wheels with their sizes, bearings, posts, walls and plates. */

import { heightsOfPost } from '../../clearance/bodies/index.ts';
import { asPoint } from '../../geometry/index.ts';
import { namer } from '../../marking/index.ts';
import { decimalFixed, decimalLengthText } from '../../movement/decimal.ts';
import type { Post } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { cuttingDataOf } from '../../teeth/cutting/index.ts';
import { moduleOf, sizeOfWheel } from '../../teeth/index.ts';
import type { SheetWords } from '../sheetWords.ts';
import type { Column, Table } from './tablePages.ts';

const left = (head: string, weight: number): Column => ({ head, weight });
const right = (head: string, weight: number): Column => ({ head, weight, align: 'right' });

/** All tables of the parts list that have rows. */
export function partsTables(placed: PlacedMovement, words: SheetWords): readonly Table[] {
  return [wheelTable(placed), cuttingTable(placed, words), bearingTable(placed), postTable(placed)].filter(
    (table) => table.rows.length > 0,
  );
}

function wheelTable(placed: PlacedMovement): Table {
  const { movement } = placed;
  const label = namer(movement);
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const rows = movement.wheels.map((wheel) => {
    const size = sizeOfWheel(wheel, movement);
    return [
      label(wheel.id),
      label(wheel.arbor),
      String(wheel.teeth),
      wheel.form,
      decimalFixed(moduleOf(wheel.size), 4),
      show(2 * size.tipRadius),
      show(2 * size.rootRadius),
      show(2 * size.pitchRadius),
      show(Math.abs(size.tipRadius - size.rootRadius)),
      show(wheel.thickness),
      show(wheel.level),
      size.source,
    ];
  });
  return {
    heading: 'Wheels and pinions',
    note: 'Blank is the diameter over the tips; depth is how far the cutter goes in. Measure a blank with an odd count of teeth before cutting.',
    columns: [
      left('Wheel', 2.2),
      left('Arbor', 2),
      right('Teeth', 0.9),
      left('Form', 1.4),
      right('Module', 1.1),
      right('Blank Ø', 1.2),
      right('Root Ø', 1.2),
      right('Pitch Ø', 1.2),
      right('Depth', 1),
      right('Thick', 1),
      right('Level', 1),
      left('Sizes from', 3.6),
    ],
    rows,
  };
}

/** What the cutter, the calipers and the dividing plate are set to. */
function cuttingTable(placed: PlacedMovement, words: SheetWords): Table {
  const { movement } = placed;
  const label = namer(movement);
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const rows = movement.wheels.map((wheel) => {
    const data = cuttingDataOf(wheel, movement);
    return [
      label(wheel.id),
      String(wheel.teeth),
      show(data.wholeDepth),
      show(data.thickness),
      data.overTips === undefined ? '' : show(data.overTips.reads),
      decimalFixed(360 / wheel.teeth, 6),
      words.cutter(data),
      words.dividing(data),
    ];
  });
  return {
    heading: 'Cutting and dividing',
    note: words.cuttingCautions,
    columns: [
      left('Wheel', 2),
      right('Teeth', 0.8),
      right('Depth', 1),
      right('Tooth', 1),
      right('Over tips', 1.2),
      right('A tooth, °', 1.5),
      left('Cutter', 3.6),
      left('Dividing', 4.4),
    ],
    rows,
  };
}

function bearingTable(placed: PlacedMovement): Table {
  const { movement } = placed;
  const label = namer(movement);
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const rows = movement.arbors.flatMap((arbor) =>
    arbor.bearings.map((bearing) => [
      label(arbor.id),
      bearing.kind,
      bearing.plate === undefined ? '' : label(bearing.plate),
      bearing.at === undefined ? '' : show(bearing.at),
      show(bearing.bore),
      show(bearing.pivot),
      show(bearing.bore - bearing.pivot),
      show(bearing.length),
      bearing.outer === undefined ? '' : show(bearing.outer),
    ]),
  );
  return {
    heading: 'Bearings',
    columns: [
      left('Arbor', 2.2),
      left('Kind', 1.2),
      left('Plate', 2),
      right('Height', 1.2),
      right('Bore Ø', 1.2),
      right('Pivot Ø', 1.2),
      right('Side shake', 1.3),
      right('Length', 1.2),
      right('Outer Ø', 1.2),
    ],
    rows,
  };
}

/** Heights and length of a post, stated or as far as it has to reach; empty where neither is known. */
function heightColumns(post: Post, { movement, places }: PlacedMovement): readonly [string, string] {
  const heights = heightsOfPost(post, places.get(post.id) ?? asPoint(post.at), movement);
  if (!heights) return ['', ''];
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  return [`${show(heights.from)} to ${show(heights.to)}`, show(heights.to - heights.from)];
}

function postTable(placed: PlacedMovement): Table {
  const { movement } = placed;
  const label = namer(movement);
  const show = (mm: number) => decimalLengthText(mm, movement.display);
  const rows = movement.posts.map((post) => [
    label(post.id),
    show(post.diameter),
    post.hole > 0 ? show(post.hole) : '',
    ...heightColumns(post, placed),
    post.note ?? '',
  ]);
  return {
    heading: 'Posts',
    columns: [
      left('Post', 2.2),
      right('Ø', 1),
      right('Hole Ø', 1),
      right('Levels', 2),
      right('Length', 1.2),
      left('Note', 3),
    ],
    rows,
  };
}
