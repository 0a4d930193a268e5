/** Which words stand on the bench: names of arbors and posts, and the lengths that place what is chosen. */

import type { Point } from '../../solver/geometry/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import type { WheelSize } from '../../solver/teeth/index.ts';
import { forSame } from '../state/derive/forSame.ts';
import { toScreen, type View } from '../state/view.ts';
import type { ScribedLocus } from './figures/scribedArcs.ts';
import { type LabelBox, type LabelPlace, readable } from './labelPlacement.ts';
import type { Lettered } from './lettering.ts';

const NAME_PX = 13;
const DIMENSION_PX = 14;
/** Names are left out where an arbor's largest wheel is smaller than this on screen, CSS pixels. */
const LEAST_RADIUS = 9;

/** What decides the words on the bench. */
export interface LetteringInput {
  readonly placed: PlacedMovement;
  readonly sizes: ReadonlyMap<string, WheelSize>;
  readonly view: View;
  readonly nameOf: (id: string) => string;
  readonly chosen: ReadonlySet<string>;
}

/** What stands at one place carries one label. */
interface Named {
  readonly place: Place;
  /** The first part there, or the first that is chosen. */
  id: PointId;
  others: number;
  radius: number;
  isChosen: boolean;
  /** Another one as far to the right. */
  readonly next: Named | undefined;
}

/** A label and what it was made from. */
interface Made {
  readonly x: number;
  readonly y: number;
  readonly view: View;
  readonly text: string;
  readonly radius: number;
  readonly isChosen: boolean;
  readonly label: Lettered | undefined;
}

/** Names of arbors and posts that are on screen. A label that is the same as at the last asking is the same object. */
export class NameLabels {
  private made = new Map<PointId, Made>();

  of(input: LetteringInput): Lettered[] {
    const { view } = input;
    const labels: Lettered[] = [];
    const made = new Map<PointId, Made>();
    for (const named of namedPlaces(input)) {
      const { radius, isChosen } = named;
      const { id, x, y } = named.place;
      const text = input.nameOf(named.id) + (named.others > 0 ? ` and ${named.others} more` : '');
      const last = this.made.get(id);
      const stands = last?.x === x && last.y === y && last.view === view && last.radius === radius;
      const now =
        stands && last.text === text && last.isChosen === isChosen
          ? last
          : { x, y, view, text, radius, isChosen, label: labelOf(named, text, view) };
      made.set(id, now);
      if (now.label) labels.push(now.label);
    }
    this.made = made;
    return labels;
  }
}

/** Lengths that differ by less cannot be told apart, mm. */
const SAME = 1e-4;

function namedPlaces(input: LetteringInput): readonly Named[] {
  const { placed, chosen } = input;
  const radii = largestRadii(placed.movement, input.sizes);
  const all: Named[] = [];
  const byX = new Map<number, Named>();
  for (const points of [placed.movement.arbors, placed.movement.posts]) {
    for (const { id } of points) {
      const place = placed.places.get(id);
      if (!place) continue;
      const radius = radii.get(id) ?? 0;
      const x = Math.round(place.x / SAME);
      const next = byX.get(x);
      const known = standingAt(next, place);
      if (!known) {
        const named = { place, id, others: 0, radius, isChosen: chosen.has(id), next };
        byX.set(x, named);
        all.push(named);
        continue;
      }
      known.others++;
      known.radius = Math.max(known.radius, radius);
      if (!known.isChosen && chosen.has(id)) {
        known.id = id;
        known.isChosen = true;
      }
    }
  }
  return all;
}

function standingAt(first: Named | undefined, { y }: Place): Named | undefined {
  for (let each = first; each; each = each.next) {
    if (Math.round(each.place.y / SAME) === Math.round(y / SAME)) return each;
  }
  return undefined;
}

function labelOf({ place, radius, isChosen }: Named, text: string, view: View): Lettered | undefined {
  const at = toScreen(view, place);
  const radiusPx = radius * view.scale;
  if (!isOnScreen(at, view) || (radiusPx < LEAST_RADIUS && !isChosen)) return undefined;
  return {
    key: `name ${place.id}`,
    text,
    rank: isChosen ? 50 : Math.min(40, radiusPx / 20),
    pen: isChosen ? 'ink' : 'soft',
    bold: isChosen,
    sizePx: NAME_PX,
    places: placesRound(at, radiusPx),
  };
}

function isOnScreen({ x, y }: Point, { width, height }: View): boolean {
  return x > -200 && y > -50 && x < width + 200 && y < height + 50;
}

/** Radius of the largest part at each point, mm; found once for the same parts. */
const largestRadii = forSame(
  ({ wheels, posts, arbors }: Movement, sizes: LetteringInput['sizes']) => [wheels, posts, arbors, sizes],
  ({ wheels, posts, arbors }, sizes): ReadonlyMap<string, number> => {
    const radii = new Map<string, number>();
    for (const { id, arbor } of wheels) {
      const size = sizes.get(id);
      if (size) radii.set(arbor, Math.max(radii.get(arbor) ?? 0, size.tipRadius, size.rootRadius));
    }
    for (const post of posts) radii.set(post.id, post.diameter / 2);
    for (const arbor of arbors) if (!radii.has(arbor.id)) radii.set(arbor.id, arbor.diameter / 2);
    return radii;
  },
);

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
  return loci.flatMap(({ rule, locus }): Lettered[] => {
    if (locus.kind !== 'circle') return [];
    const from = toScreen(view, locus.centre);
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
        key: `length ${rule}`,
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
export function signBoxes(placed: PlacedMovement, view: View): LabelBox[] {
  const boxes: LabelBox[] = [];
  for (const place of placed.places.values()) {
    const { x, y } = toScreen(view, place);
    if (!isOnScreen({ x, y }, view)) continue;
    const reach = place.state === 'loose' ? 14 : 10;
    boxes.push([x - reach, y - reach, x + reach, y + reach]);
  }
  return boxes;
}
