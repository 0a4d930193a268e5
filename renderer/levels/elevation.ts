/** The section along the folded line as plain shapes: x along the line, z up from the marked face, mm. */
import { heightsOfArbor } from '../../solver/clearance/bodies/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { Arbor, Movement, Wheel } from '../../solver/movement/schema.ts';
import type { Sizes } from '../state/derive/sizes.ts';
import type { Station } from './foldedLine.ts';

/** A cut body, symmetrical about its axis or spanning the sheet. */
export interface Block {
  readonly key: string;
  readonly part: PartId;
  readonly kind: 'plate' | 'wheel' | 'teeth' | 'hub' | 'arbor' | 'collar' | 'bearing';
  readonly x: number;
  readonly z: number;
  readonly width: number;
  readonly height: number;
}

/** Where two pitch lines run, and the reach of an end shake. */
export interface PitchLine {
  readonly key: string;
  readonly x: number;
  readonly from: number;
  readonly to: number;
}

/** Where the end shake of an arbor is drawn, mm. */
export interface ShakeMark {
  readonly arbor: PartId;
  readonly x: number;
  readonly z: number;
  readonly endShake: number;
}

/** Everything on the section, mm. */
export interface Elevation {
  readonly blocks: readonly Block[];
  readonly pitchLines: readonly PitchLine[];
  readonly shakes: readonly ShakeMark[];
  readonly axes: readonly { readonly x: number; readonly names: readonly PartId[] }[];
  /** [minX, minZ, maxX, maxZ] */
  readonly bounds: readonly [number, number, number, number];
}

/** Room left beside the outermost wheel, mm. */
const MARGIN = 4;

/** Shapes of the section through the stations. */
export function elevationOf(movement: Movement, sizes: Sizes, stations: readonly Station[]): Elevation {
  const arbors = new Map(movement.arbors.map((arbor) => [arbor.id, arbor]));
  const standing = stations.flatMap(({ at, arbors: ids }) =>
    ids.flatMap((id) => {
      const arbor = arbors.get(id);
      return arbor ? [{ at, arbor, wheels: movement.wheels.filter((wheel) => wheel.arbor === id) }] : [];
    }),
  );
  const cut = standing.flatMap(({ at, arbor, wheels }) => [
    ...arborBlocks(at, arbor, movement),
    ...wheels.flatMap((wheel) => wheelBlocks(at, wheel, sizes)),
  ]);
  const span = spanOf(cut);
  const plates = movement.plates.map(({ id, levels }): Block => {
    const width = span[1] - span[0] + 2 * MARGIN;
    return {
      key: `plate ${id}`,
      part: id,
      kind: 'plate',
      x: span[0] - MARGIN,
      z: levels.from,
      width,
      height: levels.to - levels.from,
    };
  });
  const blocks = [...plates, ...cut];
  return {
    blocks,
    pitchLines: standing.flatMap(({ at, wheels }) => wheels.flatMap((wheel) => pitchLinesOf(at, wheel, sizes))),
    shakes: standing.flatMap(({ at, arbor }) => shakeOf(at, arbor, movement)),
    axes: stations.map(({ at, arbors: names }) => ({ x: at, names })),
    bounds: boundsOf(blocks, span),
  };
}

function wheelBlocks(at: number, wheel: Wheel, sizes: Sizes): Block[] {
  const size = sizes.get(wheel.id);
  if (!size) return [];
  const body = { part: wheel.id, z: wheel.level, height: wheel.thickness } as const;
  const outer = Math.max(size.tipRadius, size.rootRadius);
  const inner = Math.min(size.tipRadius, size.rootRadius);
  // ISO 2203: teeth are not hatched in a section; the body within the roots is.
  const blocks: Block[] = [
    { ...body, key: `teeth ${wheel.id}`, kind: 'teeth', x: at - outer, width: 2 * outer },
    { ...body, key: `wheel ${wheel.id}`, kind: 'wheel', x: at - inner, width: 2 * inner },
  ];
  if (wheel.hub) {
    const { from, to, diameter } = wheel.hub;
    blocks.push({
      key: `hub ${wheel.id}`,
      part: wheel.id,
      kind: 'hub',
      x: at - diameter / 2,
      width: diameter,
      z: from,
      height: to - from,
    });
  }
  return blocks;
}

function arborBlocks(at: number, arbor: Arbor, movement: Movement): Block[] {
  const heights = heightsOfArbor(arbor, movement);
  const centred = (key: string, kind: Block['kind'], diameter: number, from: number, to: number): Block => ({
    key: `${key} ${arbor.id}`,
    part: arbor.id,
    kind,
    x: at - diameter / 2,
    width: diameter,
    z: from,
    height: to - from,
  });
  const bearings = arbor.bearings.flatMap((bearing, index) => {
    const plate = movement.plates.find(({ id }) => id === bearing.plate);
    const from = bearing.at ?? plate?.levels.from;
    if (from === undefined) return [];
    return [centred(`bearing${index}`, 'bearing', bearing.outer ?? bearing.bore * 1.8, from, from + bearing.length)];
  });
  const collars = arbor.collars.map(({ diameter, from, to }, index) =>
    centred(`collar${index}`, 'collar', diameter, from, to),
  );
  const shaft = heights ? [centred('arbor', 'arbor', arbor.diameter, heights.from, heights.to)] : [];
  return [...bearings, ...shaft, ...collars];
}

function pitchLinesOf(at: number, wheel: Wheel, sizes: Sizes): PitchLine[] {
  const size = sizes.get(wheel.id);
  if (!size) return [];
  const reach = Math.min(0.6, wheel.thickness / 2);
  return [-1, 1].map((side) => ({
    key: `${wheel.id} ${side}`,
    x: at + side * size.pitchRadius,
    from: wheel.level - reach,
    to: wheel.level + wheel.thickness + reach,
  }));
}

function shakeOf(at: number, arbor: Arbor, movement: Movement): ShakeMark[] {
  const heights = heightsOfArbor(arbor, movement);
  return heights && arbor.endShake > 0 ? [{ arbor: arbor.id, x: at, z: heights.to, endShake: arbor.endShake }] : [];
}

function spanOf(blocks: readonly Block[]): readonly [number, number] {
  if (blocks.length === 0) return [-10, 10];
  return [Math.min(...blocks.map((b) => b.x)), Math.max(...blocks.map((b) => b.x + b.width))];
}

function boundsOf(
  blocks: readonly Block[],
  span: readonly [number, number],
): readonly [number, number, number, number] {
  const lows = blocks.map((block) => block.z);
  const highs = blocks.map((block) => block.z + block.height);
  const low = Math.min(0, ...lows);
  return [span[0] - MARGIN, low - MARGIN, span[1] + MARGIN, Math.max(low + 5, ...highs) + MARGIN];
}
