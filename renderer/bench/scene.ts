/**
 * Keeps the engraver's figures in step with the movement: a figure is made anew only when the object it is drawn
 * from is another one, a place is written only when it changed.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { PartId, PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Place, PlacedMovement } from '../../solver/planting/placed.ts';
import type { WheelSize } from '../../solver/teeth/index.ts';
import type { WheelShape } from '../state/derive/wheelShape.ts';
import type { View } from '../state/view.ts';
import { type EngravedFigure, Engraver } from './engraver.ts';
import { openingFigure, plateFigure, wallFigure } from './figures/caseFigures.ts';
import { arborFigure, markFigure, placeSign, postFigure } from './figures/pointFigures.ts';
import { wheelFigure } from './figures/wheelFigure.ts';
import type { Emphasis, Pens } from './strokes/inkwell.ts';

/** All that the drawing depends on. */
export interface SceneInput {
  readonly placed: PlacedMovement;
  /** The movement whose parts are drawn: that of `placed`, or one with the same parts. */
  readonly drawn: Movement;
  /** Is it a drag under way? Free directions cost more than a frame, so they wait until it is over. */
  readonly passing: boolean;
  readonly sizes: ReadonlyMap<string, WheelSize>;
  readonly shapes: ReadonlyMap<string, WheelShape>;
  /** Drawing angle of each wheel, radians. */
  readonly phases: ReadonlyMap<string, number>;
  readonly chosen: ReadonlySet<string>;
  readonly related: ReadonlySet<string>;
  readonly hovered: PartId | undefined;
  readonly density: number;
  /** Scribed arcs, dimensions, snapping hints: what is shown for the moment, keyed. */
  readonly notes: ReadonlyMap<string, EngravedFigure>;
}

const NO_WAY: readonly Point[] = [];
/** What the rest keeps of its strength while something is chosen. */
const RECEDED = 0.42;
/** The origin is moved when the view is further from it than this many view widths. */
const ORIGIN_REACH = 4000;

/** The figures that are on the bench. */
export class BenchScene {
  readonly engraver: Engraver;
  /** Source object of each figure. */
  private readonly sources = new Map<string, readonly unknown[]>();
  private readonly places = new Map<string, Place>();
  /** State and free directions that each sign was drawn from. */
  private readonly signs = new Map<string, { readonly state: Place['state']; readonly free: readonly Point[] }>();
  private last: SceneInput | undefined;
  private origin: Point = { x: 0, y: 0 };

  constructor(canvas: HTMLCanvasElement) {
    this.engraver = new Engraver(canvas);
  }

  setPens(pens: Pens): void {
    this.engraver.setPens(pens);
  }

  /** Takes over a new state of the bench. */
  update(input: SceneInput): void {
    const { drawn } = input;
    const before = this.last;
    this.last = input;
    if (drawn !== before?.drawn || input.sizes !== before?.sizes || input.shapes !== before?.shapes) {
      this.drawParts(input);
      this.engraver.setUsualModule(usualModule(input.sizes));
    }
    const emphasisChanged =
      input.chosen !== before?.chosen || input.related !== before.related || input.hovered !== before.hovered;
    this.place(input, emphasisChanged, before?.phases);
    if (input.notes !== before?.notes) this.drawNotes(input.notes);
    this.engraver.setDensity(input.density, input.chosen.size > 0 ? RECEDED : 1);
  }

  draw(view: View, ratio: number): void {
    const away = Math.hypot(view.centre.x - this.origin.x, view.centre.y - this.origin.y);
    if (away > ORIGIN_REACH * Math.max(view.width / view.scale, 1)) this.moveOrigin(view.centre);
    this.engraver.draw(view, ratio);
  }

  /** Tells places from near `centre` from now on; called when a document is opened or the view has gone far. */
  moveOrigin(centre: Point): void {
    this.origin = { x: Math.round(centre.x), y: Math.round(centre.y) };
    this.engraver.setOrigin(this.origin);
    this.places.clear();
    if (this.last) this.place(this.last, true);
  }

  dispose(): void {
    this.engraver.dispose();
  }

  private drawParts({ drawn: movement, sizes, shapes }: SceneInput): void {
    const seen = new Set<string>();
    const draw = (key: string, from: readonly unknown[], make: () => EngravedFigure): void => {
      seen.add(key);
      const known = this.sources.get(key);
      if (known && known.length === from.length && known.every((source, index) => source === from[index])) return;
      this.sources.set(key, from);
      this.engraver.setFigure('parts', key, make());
    };
    for (const plate of movement.plates) draw(`plate:${plate.id}`, [plate], () => plateFigure(plate));
    for (const opening of movement.openings) draw(`opening:${opening.id}`, [opening], () => openingFigure(opening));
    for (const wall of movement.walls) draw(`wall:${wall.id}`, [wall], () => wallFigure(wall));
    for (const post of movement.posts) draw(`post:${post.id}`, [post], () => postFigure(post));
    for (const mark of movement.marks) draw(`mark:${mark.id}`, [mark], () => markFigure(mark));
    for (const wheel of movement.wheels) {
      const size = sizes.get(wheel.id);
      if (!size) continue;
      const shape = shapes.get(wheel.id);
      draw(`wheel:${wheel.id}`, [wheel, size, shape], () => wheelFigure(wheel, size, shape));
    }
    for (const arbor of movement.arbors) draw(`arbor:${arbor.id}`, [arbor], () => arborFigure(arbor));
    for (const key of [...this.engraver.keys('parts')]) {
      if (seen.has(key)) continue;
      this.engraver.removeFigure('parts', key);
      this.sources.delete(key);
    }
  }

  /** Writes the places and drawing angles that changed, and the signs of places whose state or freedom changed. */
  private place(
    { placed, phases, ...input }: SceneInput,
    everything: boolean,
    turnedFrom?: SceneInput['phases'],
  ): void {
    const emphasisOf = (part: string): Emphasis => {
      if (input.chosen.has(part)) return 'chosen';
      if (input.hovered === part) return 'hovered';
      return input.related.has(part) || input.chosen.size === 0 ? 'related' : 'plain';
    };
    const moved = new Set<PointId>();
    for (const place of placed.places.values()) {
      const before = this.places.get(place.id);
      if (before === place && !everything) continue;
      this.places.set(place.id, place);
      this.sign(place, input.passing);
      // Another planting of the same places moves nothing.
      if (before && before.x === place.x && before.y === place.y && !everything) continue;
      moved.add(place.id);
      this.engraver.setPlace(place.id, place.x, place.y, 0, emphasisOf(place.id));
    }
    this.forget(placed);
    if (moved.size === 0 && phases === turnedFrom) return;
    for (const wheel of placed.movement.wheels) {
      const phase = phases.get(wheel.id) ?? 0;
      if (!moved.has(wheel.arbor) && turnedFrom?.get(wheel.id) === phase) continue;
      const place = placed.places.get(wheel.arbor);
      if (place) this.engraver.setPlace(wheel.id, place.x, place.y, phase, emphasisOf(wheel.id));
    }
  }

  private sign(place: Place, passing: boolean): void {
    const { id, state } = place;
    const drawn = this.signs.get(id);
    const free = state !== 'loose' || passing ? NO_WAY : place.free;
    if (drawn?.state === state && drawn.free === free) return;
    this.signs.set(id, { state, free });
    this.engraver.setFigure('signs', `place:${id}`, placeSign(place, free));
  }

  private forget(placed: PlacedMovement): void {
    if (this.places.size === placed.places.size) return;
    for (const id of [...this.places.keys()]) {
      if (placed.places.has(id as PointId)) continue; // keys of `places` are point ids
      this.places.delete(id);
      this.signs.delete(id);
      this.engraver.removeFigure('signs', `place:${id}`);
      this.engraver.dropOwner(id);
    }
  }

  private drawNotes(notes: ReadonlyMap<string, EngravedFigure>): void {
    for (const [key, figure] of notes) this.engraver.setFigure('notes', key, figure);
    for (const key of [...this.engraver.keys('notes')]) {
      if (notes.has(key)) continue;
      this.engraver.removeFigure('notes', key);
      this.engraver.dropOwner(`note:${key}`);
    }
  }
}

/** The middle one of all modules, mm. */
function usualModule(sizes: ReadonlyMap<string, WheelSize>): number {
  const modules = [...sizes.values()].map(({ module }) => module).sort((a, b) => a - b);
  return modules[Math.floor(modules.length / 2)] ?? 1;
}
