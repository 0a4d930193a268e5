/** Which words stand on the bench: names of arbors and posts, and the lengths that place what is chosen. */
import type { WheelSize } from '../../solver/gearing/index.ts';
import type { PointId } from '../../solver/movement/index.ts';
import type { PlacedMovement } from '../../solver/planting/index.ts';
import type { ScribedLocus } from './figures/scribedArcs.ts';
import { type Box, type LabelPlace, readable } from './labelPlacement.ts';
import type { Lettered } from './lettering.ts';
import { type Point, toScreen, type View } from './view.ts';

const NAME_PX = 13;
const DIMENSION_PX = 14;
/** Names are left out where an arbor's largest wheel is smaller than this on screen, CSS pixels. */
const LEAST_RADIUS = 9;

export interface LetteringInput {
  readonly placed: PlacedMovement;
  readonly sizes: ReadonlyMap<string, WheelSize>;
  readonly view: View;
  readonly nameOf: (id: string) => string;
  readonly chosen: ReadonlySet<string>;
}

/** Names of arbors and posts that are on screen. */
export function nameLabels(input: LetteringInput): Lettered[] {
  const { placed, view, chosen } = input;
  const radii = largestRadii(input);
  const labels: Lettered[] = [];
  const named = new Map<string, { readonly at: Point; readonly ids: string[]; radius: number }>();
  for (const { id } of [...placed.movement.arbors, ...placed.movement.posts]) {
    const place = placed.places.get(id);
    if (!place) continue;
    // What stands at one place carries one label.
    const key = `${place.x.toFixed(4)} ${place.y.toFixed(4)}`;
    const radius = radii.get(id) ?? 0;
    const known = named.get(key);
    if (known) {
      known.ids.push(id);
      known.radius = Math.max(known.radius, radius);
    } else named.set(key, { at: toScreen(view, place), ids: [id], radius });
  }
  for (const [key, { at, ids, radius }] of named) {
    const isChosen = ids.some((id) => chosen.has(id));
    const radiusPx = radius * view.scale;
    if (!isOnScreen(at, view) || (radiusPx < LEAST_RADIUS && !isChosen)) continue;
    const first = ids.find((id) => chosen.has(id)) ?? ids[0] ?? '';
    const others = ids.length - 1;
    labels.push({
      key: `name ${key}`,
      text: input.nameOf(first) + (others > 0 ? ` and ${others} more` : ''),
      rank: isChosen ? 50 : Math.min(40, radiusPx / 20),
      pen: isChosen ? 'ink' : 'soft',
      bold: isChosen,
      sizePx: NAME_PX,
      places: placesRound(at, radiusPx),
    });
  }
  return labels;
}

function isOnScreen({ x, y }: Point, { width, height }: View): boolean {
  return x > -200 && y > -50 && x < width + 200 && y < height + 50;
}

function largestRadii({ placed, sizes }: LetteringInput): Map<string, number> {
  const radii = new Map<string, number>();
  for (const { id, arbor } of placed.movement.wheels) {
    const size = sizes.get(id);
    if (size) radii.set(arbor, Math.max(radii.get(arbor) ?? 0, size.tipRadius, size.rootRadius));
  }
  for (const post of placed.movement.posts) radii.set(post.id, post.diameter / 2);
  for (const arbor of placed.movement.arbors) if (!radii.has(arbor.id)) radii.set(arbor.id, arbor.diameter / 2);
  return radii;
}

/** Inside the wheel below its cross, then above; then outside below, above, right and left. */
function placesRound({ x, y }: Point, radiusPx: number): LabelPlace[] {
  const places: LabelPlace[] = [];
  const at = (dx: number, dy: number) => places.push({ at: { x: x + dx, y: y + dy }, turn: 0 });
  if (radiusPx > 46) {
    const inner = Math.min(radiusPx * 0.42, 60);
    at(0, inner);
    at(0, -inner);
  }
  const outer = Math.max(radiusPx, 10) + 12;
  at(0, outer);
  at(0, -outer);
  at(outer + 44, 0);
  at(-outer - 44, 0);
  // Beside an edge, a name still finds room a little to one side.
  for (const side of [-32, 32]) for (const up of [outer, -outer]) at(side, up);
  at(0, 26);
  at(0, -26);
  return places;
}

/** The lengths of the loci that place a point, written along their radii. */
export function locusLabels(
  place: Point,
  loci: readonly ScribedLocus[],
  view: View,
  lengthSays: (mm: number) => string,
): Lettered[] {
  const to = toScreen(view, place);
  return loci.flatMap((locus): Lettered[] => {
    if (locus.radius === undefined) return [];
    const from = toScreen(view, locus.from);
    const turn = readable(Math.atan2(from.y - to.y, to.x - from.x));
    const along = (part: number, off: number): LabelPlace => ({
      at: {
        x: from.x + (to.x - from.x) * part - off * Math.sin(turn),
        y: from.y + (to.y - from.y) * part - off * Math.cos(turn),
      },
      turn,
    });
    return [
      {
        key: `length ${locus.rule}`,
        text: lengthSays(locus.radius),
        rank: 100,
        must: true,
        pen: 'scribe',
        sizePx: DIMENSION_PX,
        places: [0.5, 0.4, 0.6, 0.3, 0.7, 0.22, 0.78].flatMap((part) => [along(part, 10), along(part, -10)]),
      },
    ];
  });
}

/** Boxes of the places' signs, which no label may cover. */
export function signBoxes(placed: PlacedMovement, view: View): Box[] {
  const boxes: Box[] = [];
  for (const place of placed.places.values()) {
    const { x, y } = toScreen(view, place);
    if (!isOnScreen({ x, y }, view)) continue;
    const reach = place.state === 'loose' ? 14 : 10;
    boxes.push([x - reach, y - reach, x + reach, y + reach]);
  }
  return boxes;
}

/** Points that belong to a part: a wheel's arbor, or the point itself. */
export function pointOf(placed: PlacedMovement, part: string): PointId | undefined {
  const wheel = placed.movement.wheels.find(({ id }) => id === part);
  const id = (wheel?.arbor ?? part) as PointId; // looked up at once; a part that is no point is not found
  return placed.places.has(id) ? id : undefined;
}
