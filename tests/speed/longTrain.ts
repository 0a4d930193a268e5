/**
 * A long train for measuring the bench: every arbor carries a wheel and a pinion and is placed from the two before
 * it. One arbor lacks its second rule: it swings, and all behind it swing along when it is dragged.
 */

const MODULE = 0.5;
const WHEEL = 64;
const PINION = 8;
/** Calculated depth of wheel and pinion, mm. */
const DEPTH = ((WHEEL + PINION) * MODULE) / 2;

/**
 * The movement as the text of its file.
 *
 * @param arbors at least 4
 * @param loose  how many of the last arbors swing together; the first of them is `a${arbors - loose}`
 */
export function longTrain(arbors: number, loose: number): string {
  const swings = arbors - loose;
  const id = (index: number): string => `a${index}`;
  // A row of flat triangles, folded into lines of 20 so that it fills a plate.
  const at = (index: number): readonly [number, number] => [index * DEPTH * 0.62, (index % 2) * DEPTH * 0.785];
  return JSON.stringify({
    format: 'depthwright-movement',
    version: 1,
    title: `Long train of ${arbors}`,
    arbors: Array.from({ length: arbors }, (_, i) => ({ id: id(i), at: at(i), diameter: 2 })),
    wheels: Array.from({ length: arbors }, (_, i) => [
      wheel(`w${i}`, id(i), WHEEL, i),
      wheel(`p${i}`, id(i), PINION, i + 1),
    ]).flat(),
    rules: [
      { id: 'hold', kind: 'held', point: id(0), at: at(0) },
      { id: 'start', kind: 'bearing', point: id(1), centre: id(0), angle: 51 },
      ...Array.from({ length: arbors - 1 }, (_, i) => ({
        id: `d${i + 1}`,
        kind: 'depth',
        wheels: [`p${i}`, `w${i + 1}`],
      })),
      ...Array.from({ length: arbors - 2 }, (_, i) => ({
        id: `s${i + 2}`,
        kind: 'distance',
        points: [id(i), id(i + 2)],
        length: DEPTH * 1.24,
      })).filter((_, i) => i + 2 !== swings),
    ],
    drive: { arbor: id(0), period: { value: 1, unit: 'h' } },
  });
}

function wheel(id: string, arbor: string, teeth: number, storey: number): object {
  return { id, arbor, teeth, size: { module: MODULE }, form: 'involute', level: 3 * storey, thickness: 2 };
}
