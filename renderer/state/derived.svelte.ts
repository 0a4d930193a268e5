/** What follows from the document, from how it is looked at and from what the hand does; nothing here is set but by the idle worker. */
import type { Finding } from '../../solver/clearance/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { namesOf, type Speaker, speakerOf } from '../../solver/words/index.ts';
import { carriedPlaces } from './derive/carriedPlaces.ts';
import { type Checked, findingsToShow, followingCheck, type TriedCure } from './derive/followingCheck.ts';
import { keepingTrain, samePartsAs, startingFromLast, withWheels } from './derive/keeping.ts';
import { passingPhases, restPhases } from './derive/restPhases.ts';
import { type Sizes, sizesOf } from './derive/sizes.ts';
import { turnedPhases } from './derive/turnedPhases.ts';
import { type Shapes, shapesOf } from './derive/wheelShapes.ts';
import type { DocumentState } from './document.svelte.ts';
import type { Hand } from './hand.svelte.ts';
import type { Looking } from './looking.svelte.ts';

/** Works out what the other three parts imply; nothing of it is set. */
export class DerivedState {
  private readonly document: DocumentState;
  private readonly looking: Looking;
  private readonly hand: Hand;
  /** What the worker found of a movement, once the window was idle. */
  private found = $state.raw<Checked | undefined>(undefined);

  constructor(document: DocumentState, looking: Looking, hand: Hand) {
    this.document = document;
    this.looking = looking;
    this.hand = hand;
  }

  /** The planting of the movement itself; the last one starts the iteration, and never decides anything. */
  private readonly plant = startingFromLast<PlacedMovement>(plantMovement);
  readonly settled: PlacedMovement = $derived.by(() => this.plant(this.document.movement));
  private readonly keepTrain = keepingTrain();
  /** The movement as its train, sizes and names are told: only places and rules that place may be older than now. */
  readonly train: Movement = $derived.by(() => this.keepTrain(this.document.movement));
  /** Who speaks for the document: its unit, decimals and names. */
  readonly speaker: Speaker = $derived.by(() => speakerOf(this.document.movement));
  readonly turning = $derived(turnMovement(this.train));
  private readonly rehearsed = $derived.by(() => carriedPlaces(this.settled, this.turning, this.hand.turned));
  readonly placed: PlacedMovement = $derived.by(() => this.hand.preview?.placed ?? this.rehearsed);
  /** The movement whose parts are drawn: a preview that adds only rules and places draws those of the movement itself. */
  readonly drawn: Movement = $derived(samePartsAs(this.placed.movement, this.train));
  private readonly measure = startingFromLast(sizesOf);
  readonly ownSizes: Sizes = $derived(this.measure(this.train));
  readonly sizes: Sizes = $derived(this.drawn === this.train ? this.ownSizes : sizesOf(this.drawn, this.ownSizes));
  private readonly outline = startingFromLast(shapesOf);
  readonly shapes: Shapes = $derived(this.outline(this.drawn));
  private readonly settledPhases = $derived(restPhases(this.settled));
  private readonly restPhases = $derived.by(() => {
    const { preview } = this.hand;
    return preview ? passingPhases(preview.placed, this.settled, this.settledPhases) : this.settledPhases;
  });
  /** Drawing angles of all wheels, radians. */
  readonly phases = $derived.by(() =>
    turnedPhases(this.restPhases, this.document.movement, this.turning, this.hand.turned),
  );
  private readonly check = followingCheck();
  private readonly followed = $derived(this.check(this.placed));
  private readonly ownNames = $derived(namesOf(this.train));
  readonly names = $derived(this.drawn === this.train ? this.ownNames : namesOf(this.drawn));
  readonly findings: readonly Finding[] = $derived.by(() =>
    findingsToShow(this.found, this.followed, {
      movement: this.document.movement,
      names: this.names,
      moving: this.hand.preview !== undefined,
    }),
  );
  /** What is chosen, with the wheels of chosen arbors. */
  readonly emphasised = $derived.by(() => withWheels(this.looking.chosen, this.drawn));

  nameOf = (id: string): string => this.ownNames.get(id) ?? this.names.get(id) ?? id;
  lengthSays = (mm: number): string => this.speaker.figure(mm);

  /** Has the worker looked at just this movement? */
  get isChecked(): boolean {
    return this.found?.movement === this.document.movement;
  }

  /** Cures of a finding that were tried while the window was idle; `undefined` until then. */
  curesOf = (key: string): readonly TriedCure[] | undefined =>
    this.isChecked ? this.found?.cures.get(key) : undefined;

  /** Takes what the worker found. */
  takeChecked(checked: Checked): void {
    this.found = checked;
  }
}
