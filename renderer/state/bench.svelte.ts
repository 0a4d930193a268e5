/**
 * The state of the window: the movement, what is chosen and how it is looked at. Everything else is derived.
 *
 * The movement changes only through `change` (one transaction, undone as one step). While a gesture is under way
 * `preview` stands in for the planting and touches no history. Components read and call; nothing is set in a derivation.
 */

import type { RecentFile, ShellBridge } from '../../electron/bridge.ts';
import type { Finding } from '../../solver/clearance/index.ts';
import type { PartId, RuleId, WheelId } from '../../solver/movement/ids.ts';
import {
  commit,
  type Edit,
  emptyMovement,
  type History,
  type Parts,
  type Problem,
  redo,
  type Step,
  startHistory,
  type Transaction,
  undo,
} from '../../solver/movement/index.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { turnMovement } from '../../solver/train/index.ts';
import { type Rational, rational } from '../../solver/train/turning/rational.ts';
import { namesOf, type Speaker, speakerOf } from '../../solver/words/index.ts';
import type { SettingDown } from '../gestures/settingDown.svelte.ts';
import type { MadePart } from '../readings/madeParts.ts';
import type { Session } from '../shell/session.ts';
import { lengthSays } from '../wording/lengthWords.ts';
import { refusalSays } from '../wording/refusalSays.ts';
import { carriedPlaces } from './derive/carriedPlaces.ts';
import { chosenBounds } from './derive/chosenBounds.ts';
import { type Checked, type Cure, findingsToShow, followingCheck } from './derive/followingCheck.ts';
import { keepingTrain, samePartsAs, startingFromLast, withWheels } from './derive/keeping.ts';
import { passingPhases, restPhases } from './derive/restPhases.ts';
import { type Sizes, sizesOf } from './derive/sizes.ts';
import { turnedPhases } from './derive/turnedPhases.ts';
import { viewOfGap } from './derive/viewOfGap.ts';
import { type Shapes, shapesOf } from './derive/wheelShapes.ts';
import { boundsOfWork } from './derive/workBounds.ts';
import type { Look } from './looks.ts';
import { OutlineWork } from './outlineWork.svelte.ts';
import type { Preview } from './preview.ts';
import { type Bounds, fitTo, type Point, type View } from './view.ts';

export const FACES = { bench: 'Bench', levels: 'Levels', steps: 'Steps', sheets: 'Sheets' } as const;
export type Face = keyof typeof FACES;

/** Something told to the maker, until the next thing is told. */
export interface Told {
  readonly kind: 'done' | 'refused';
  readonly says: string;
}

export class Bench {
  private history = $state.raw<History>(startHistory(emptyMovement()));
  readonly movement: Movement = $derived(this.history.movement);
  preview = $state.raw<Preview | undefined>(undefined);
  chosen = $state.raw<readonly PartId[]>([]);
  hovered = $state.raw<PartId | undefined>(undefined);
  look = $state<Look>('paper');
  density = $state(0.6);
  face = $state<Face>('bench');
  view = $state.raw<View>({ centre: { x: 0, y: 0 }, scale: 3, width: 800, height: 600 });
  told = $state.raw<Told | undefined>(undefined);
  keysShown = $state(false);
  /** What was copied, for pasting. */
  copied = $state.raw<Parts | undefined>(undefined);
  /** The depth rule whose pair is looked at closely. */
  depthShown = $state<RuleId | undefined>(undefined);
  /** Whether the train is being turned, and how far, in exact turns of the drive. */
  rehearsing = $state(false);
  turned = $state.raw<Rational>(rational(0));
  /** Whether counts are being looked for. */
  countsShown = $state(false);
  /** What is looked at in the room between parts: a planting that is found, whether the train runs, gaps and end shake. */
  clearanceShown = $state<'planting' | 'trial' | 'gaps' | undefined>(undefined);
  /** The wheel whose cutting is looked at. */
  cuttingShown = $state<WheelId | undefined>(undefined);
  /** Whether the power of the movement is looked at. */
  powerShown = $state(false);
  /** Which part of what was made is looked at: readings, changes, errors, fits. */
  madeShown = $state<MadePart | undefined>(undefined);
  /** The guided build: offered at the first start, on, or put away. */
  guide = $state<'off' | 'offered' | 'on'>('off');
  /** Key of the finding that was asked for last. */
  findingShown = $state<string | undefined>(undefined);
  /** Files opened before, as the shell keeps them. */
  recent = $state.raw<readonly RecentFile[]>([]);
  /** The handle that the shell knows the document by. */
  handle = $state('');
  /** How many documents the window has taken over: what belongs to one is kept with its number, whatever its file is called. */
  documentsOpened = $state(0);
  /** A file that could not be read, with everything that was wrong in it. */
  problems = $state.raw<{ readonly file: string; readonly problems: readonly Problem[] } | undefined>(undefined);
  /** What the commands ask of the shell; there from the first moment that the window can show a movement. */
  session = $state.raw<Session | undefined>(undefined);
  platform: ShellBridge['platform'] = 'linux';
  /** The transaction after which the document was saved; `undefined` for the document as it was opened. */
  private savedAfter = $state.raw<Transaction | 'never' | undefined>(undefined);
  /** What pointers set down next, while something is being set down. */
  settingDown = $state.raw<SettingDown | undefined>(undefined);
  /** Which corner or side of a chosen outline is chosen. */
  readonly outlines = new OutlineWork(this);
  /** The frame that is being drawn round several places, CSS pixels. */
  frame = $state.raw<{ readonly from: Point; readonly to: Point } | undefined>(undefined);
  /** Gives up the gesture under way; set by whoever listens to the pointers. */
  abandonGesture: () => boolean = () => false;

  /** The planting of the movement itself; the last one starts the iteration, and never decides anything. */
  private readonly plant = startingFromLast<PlacedMovement>(plantMovement);
  readonly settled: PlacedMovement = $derived(this.plant(this.movement));
  private readonly keepTrain = keepingTrain();
  /** The movement as its train, sizes and names are told: only places and rules that place may be older than now. */
  readonly train: Movement = $derived(this.keepTrain(this.movement));
  readonly turning = $derived(turnMovement(this.train));
  private readonly rehearsed = $derived(carriedPlaces(this.settled, this.turning, this.turned));
  readonly placed: PlacedMovement = $derived(this.preview?.placed ?? this.rehearsed);
  /** The movement whose parts are drawn: a preview that adds only rules and places draws those of the movement itself. */
  readonly drawn: Movement = $derived(samePartsAs(this.placed.movement, this.train));
  private readonly measure = startingFromLast(sizesOf);
  readonly ownSizes: Sizes = $derived(this.measure(this.train));
  readonly sizes: Sizes = $derived(this.drawn === this.train ? this.ownSizes : sizesOf(this.drawn, this.ownSizes));
  private readonly outline = startingFromLast(shapesOf);
  readonly shapes: Shapes = $derived(this.outline(this.drawn));
  private readonly settledPhases = $derived(restPhases(this.settled));
  private readonly restPhases = $derived(
    this.preview ? passingPhases(this.preview.placed, this.settled, this.settledPhases) : this.settledPhases,
  );
  readonly phases = $derived(turnedPhases(this.restPhases, this.movement, this.turning, this.turned));
  private readonly check = followingCheck();
  private readonly followed = $derived(this.check(this.placed));
  /** What the worker found of a movement, once the window was idle. */
  checked = $state.raw<Checked | undefined>(undefined);
  private readonly ownNames = $derived(namesOf(this.train));
  readonly names = $derived(this.drawn === this.train ? this.ownNames : namesOf(this.drawn));
  readonly findings: readonly Finding[] = $derived(
    findingsToShow(this.checked, this.followed, {
      movement: this.movement,
      names: this.names,
      moving: this.preview !== undefined,
    }),
  );
  /** What is chosen, with the wheels of chosen arbors. */
  readonly emphasised = $derived(withWheels(this.chosen, this.drawn));
  readonly unsaved: boolean = $derived(this.savedAfter !== this.history.done.at(-1));
  readonly undoSays: string | undefined = $derived(this.history.done.at(-1)?.label);
  readonly redoSays: string | undefined = $derived(this.history.undone.at(-1)?.label);

  /** Who speaks for the document: its unit, decimals and names. */
  readonly speaker: Speaker = $derived(speakerOf(this.movement));

  nameOf = (id: string): string => this.ownNames.get(id) ?? this.names.get(id) ?? id;
  lengthSays = (mm: number): string => lengthSays(mm, this.movement.display);

  /** Takes over a document: another movement, its history empty. */
  adopt(movement: Movement, document: { handle: string; unsaved: boolean }): void {
    this.abandonGesture();
    this.preview = undefined;
    this.settingDown = undefined;
    this.chosen = [];
    this.hovered = undefined;
    this.findingShown = undefined;
    this.told = undefined;
    while (this.leaveView());
    if (this.guide === 'offered') this.guide = 'off';
    this.history = startHistory(movement);
    this.savedAfter = document.unsaved ? 'never' : undefined;
    this.handle = document.handle;
    this.documentsOpened++;
    this.fit();
  }

  /**
   * Makes one change, undone as one step.
   *
   * @param says   what was done, as the undo button tells it: "move Second arbor"
   * @param group  changes of one group that follow each other quickly are one step: a row of arrow keys
   * @returns      whether it was made; a refusal is told in the strip and changes nothing
   */
  change(says: string, edits: readonly Edit[], after: { chosen?: readonly PartId[]; group?: string } = {}): boolean {
    const outcome = commit(this.history, {
      label: says,
      edit: { kind: 'several', edits },
      timeMs: Date.now(),
      selectionBefore: this.chosen,
      selectionAfter: after.chosen ?? this.chosen,
      ...(after.group === undefined ? {} : { group: after.group }),
    });
    if (outcome.kind === 'refused') {
      this.tell('refused', refusalSays(outcome, this.nameOf));
      return false;
    }
    this.history = outcome.history;
    if (after.chosen) this.chosen = after.chosen;
    this.told = undefined;
    return true;
  }

  undo(): void {
    this.take(undo(this.history), 'Undone');
  }

  redo(): void {
    this.take(redo(this.history), 'Done again');
  }

  private take(step: Step | undefined, says: string): void {
    if (!step) return;
    this.abandonGesture();
    this.preview = undefined;
    this.history = step.history;
    this.chosen = step.selection as readonly PartId[]; // selections are handed to the history as part ids only
    this.tell('done', `${says}: ${step.transaction.label}`);
  }

  /** The document as it is now stands in its file. */
  wasSaved(document: { handle: string; name: string }): void {
    this.handle = document.handle;
    this.savedAfter = this.history.done.at(-1);
    this.tell('done', `Saved as ${document.name}.`);
  }

  choose(parts: readonly PartId[], adding = false): void {
    if (!adding) {
      this.chosen = parts;
      return;
    }
    const kept = this.chosen.filter((part) => !parts.includes(part));
    this.chosen = [...kept, ...parts.filter((part) => !this.chosen.includes(part))];
  }

  /** Is a view open that covers the bench? */
  get viewShown(): boolean {
    const over = this.depthShown ?? this.cuttingShown ?? this.clearanceShown;
    return over !== undefined || this.countsShown || this.powerShown || this.madeShown !== undefined;
  }

  /** Goes back to the bench from whatever lies over it; false where nothing did. */
  leaveView(): boolean {
    if (this.viewShown) {
      this.depthShown = undefined;
      this.cuttingShown = undefined;
      this.countsShown = false;
      this.clearanceShown = undefined;
      this.powerShown = false;
      this.madeShown = undefined;
      return true;
    }
    if (!this.rehearsing) return false;
    this.rehearsing = false;
    this.turned = rational(0);
    return true;
  }

  /** Cures of a finding that were tried while the window was idle; `undefined` until then. */
  curesOf = (key: string): readonly Cure[] | undefined =>
    this.checked?.movement === this.movement ? this.checked.cures.get(key) : undefined;

  /** Shows where a finding is: chooses its parts and brings the place into view. */
  showFinding(key: string): void {
    const finding = this.findings.find((each) => each.key === key);
    if (!finding) return;
    this.findingShown = key;
    this.chosen = finding.parts;
    if (!finding.at || this.face !== 'bench') return;
    this.view = viewOfGap(this.view, finding.at);
  }

  tell(kind: Told['kind'], says: string): void {
    this.told = { kind, says };
  }

  show(face: Face): void {
    this.face = face;
  }

  /** Shows what is chosen, large, with some of its surroundings. */
  fitChosen(): void {
    const bounds = chosenBounds(this.emphasised, this.placed, this.sizes);
    if (bounds) this.fit(bounds);
  }

  fit(bounds: Bounds | undefined = boundsOfWork(this.settled, this.sizes)): void {
    // Straight-sided work would reach under the title block in the corner; round work does not.
    const hasCorners = this.movement.plates.some(({ outline }) => outline.kind === 'path');
    this.view = fitTo(this.view, bounds, 44, hasCorners ? 56 : 0);
  }
}
