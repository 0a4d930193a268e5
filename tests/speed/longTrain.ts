/**
 * Long trains for measuring the bench: every arbor carries a wheel and a pinion and is placed from the two before
 * it. One arbor lacks its second rule: it swings, and all behind it swing along when it is dragged.
 */

/** Module of every wheel, mm. */
export const TRAIN_MODULE = 0.5;
const PINION = 8;

interface Train {
  readonly title: string;
  /** Teeth of every wheel. */
  readonly wheel: number;
  readonly places: readonly (readonly [number, number])[];
}

/** Calculated depth of wheel and pinion, mm. */
const depthOf = (wheel: number): number => ((wheel + PINION) * TRAIN_MODULE) / 2;

/**
 * One row of flat triangles: the movement as the text of its file.
 *
 * @param arbors at least 4
 * @param loose  how many of the last arbors swing together; the first of them is `a${arbors - loose}`
 */
export function longTrain(arbors: number, loose: number): string {
  const wheel = 64;
  const depth = depthOf(wheel);
  const places = Array.from({ length: arbors }, (_, i) => [i * depth * 0.62, (i % 2) * depth * 0.785] as const);
  return written({ title: `Long train of ${arbors}`, wheel, places }, loose);
}

/** Width and distance of the rows of a folded train, in depths. */
const ROW_WIDTH = 15.2;
const ROW_APART = 1.62;

/**
 * The same train folded into rows, with wheels so small that the whole of it, `arbors` up to about 200, fits into a
 * window at a size at which the bench draws every tooth.
 */
export function foldedTrain(arbors: number, loose: number): string {
  const wheel = 20;
  const depth = depthOf(wheel);
  const places: [number, number][] = [];
  for (let i = 0; i < arbors; i++) {
    // The next arbor stands a depth from the last, towards a point further along the folded guide.
    const [gx, gy] = alongRows(0.62 * i);
    const to = [depth * gx, depth * (gy + (i % 2 === 0 ? 0.39 : -0.39))] as const;
    const [x, y] = places.at(-1) ?? [to[0] - depth, to[1]];
    const away = Math.hypot(to[0] - x, to[1] - y);
    places.push([x + (depth * (to[0] - x)) / away, y + (depth * (to[1] - y)) / away]);
  }
  return written({ title: `Folded train of ${arbors}`, wheel, places }, loose);
}

/** The guide of the folded train, in depths: rows to the right and to the left in turn, each below the last. */
function alongRows(length: number): readonly [number, number] {
  const row = Math.floor(length / (ROW_WIDTH + ROW_APART));
  const rest = length - row * (ROW_WIDTH + ROW_APART);
  const across = Math.min(rest, ROW_WIDTH);
  const x = row % 2 === 0 ? across : ROW_WIDTH - across;
  return [x, -row * ROW_APART - (rest - across)];
}

function written({ title, wheel, places }: Train, loose: number): string {
  const arbors = places.length;
  const swings = arbors - loose;
  const id = (index: number): string => `a${index}`;
  const apart = (a: number, b: number): number => {
    const [[ax, ay], [bx, by]] = [places[a] ?? [0, 0], places[b] ?? [0, 0]];
    return Math.hypot(ax - bx, ay - by);
  };
  const [[x0, y0], [x1, y1]] = [places[0] ?? [0, 0], places[1] ?? [1, 0]];
  return JSON.stringify({
    format: 'depthwright-movement',
    version: 2,
    title,
    arbors: places.map((at, i) => ({ id: id(i), at, diameter: 2 })),
    wheels: places.flatMap((_, i) => [
      wheelOf(`w${i}`, id(i), wheel, i),
      wheelOf(`p${i}`, id(i), PINION, i + 1), // in the storey of the next wheel, which it drives
    ]),
    rules: [
      { id: 'hold', kind: 'held', point: id(0), at: [x0, y0] },
      {
        id: 'start',
        kind: 'bearing',
        point: id(1),
        centre: id(0),
        angle: (Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI,
      },
      ...places.slice(1).map((_, i) => ({ id: `d${i + 1}`, kind: 'depth', wheels: [`p${i}`, `w${i + 1}`] })),
      ...places
        .slice(2)
        .map((_, i) => ({ id: `s${i + 2}`, kind: 'distance', points: [id(i), id(i + 2)], length: apart(i, i + 2) }))
        .filter((_, i) => i + 2 !== swings),
    ],
    drive: { arbor: id(0), period: { value: 1, unit: 'h' } },
  });
}

function wheelOf(id: string, arbor: string, teeth: number, storey: number): object {
  return { id, arbor, teeth, size: { module: TRAIN_MODULE }, form: 'involute', level: 3 * storey, thickness: 2 };
}
