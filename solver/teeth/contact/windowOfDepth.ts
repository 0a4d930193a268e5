/**
 * The window of a depth: between what distances a pair runs, where a wanted shake falls, and how near the two ends the
 * pair comes over a whole turn. Distances in mm, axis to axis.
 *
 * A pair outside each other opens as the distance grows; a wheel inside a ring opens as it shrinks. "Open" is the sense
 * in which play grows, and the searches run along it.
 */
import type { Movement, Wheel } from '../../movement/schema.ts';
import { rootBetween } from '../forms/bracketed.ts';
import type { ToothForm } from '../forms/toothForm.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import type { NoContact } from './contact.ts';
import { clearancesOf, farthestReach } from './contactOfForms.ts';
import { formsOfPair, type PairDoubt, type PairForms } from './contactOfPair.ts';
import { reachBeyondPitch } from './driveOfTooth.ts';
import { flankSpan, playAt } from './quickReadings.ts';

/** What is asked of a window beside its two ends. */
export interface WindowOptions {
  /** Distance at which the window is looked at; the calculated one when absent. */
  readonly distance?: number;
  /** Wanted shake along the pitch line, mm. */
  readonly shakes?: readonly number[];
  /** Side play of each arbor: how far its centre can stand from its place, mm. From the bearings when absent. */
  readonly sideShake?: readonly [number, number];
}

/** Between what distances a pair runs, mm, and how near the ends the distance in question comes. */
export interface DepthWindow {
  readonly kind: 'window';
  readonly calculated: number;
  readonly distance: number;
  readonly internal: boolean;
  /** Deepest distance that is free of binding and bottoming, and which of the two sets it. */
  readonly deepest: number;
  readonly deepestBy: 'binding' | 'bottoming';
  /** Shallowest distance with flanks always in touch, and what ends it: even contact, or contact at all. */
  readonly shallowest: number;
  readonly shallowestBy: 'evenContact' | 'lost';
  /** Distance beyond which some part of the pitch has no contact at all. */
  readonly lostAt: number;
  /** Mean backlash along the pitch line at the distance, mm, and its change for a hundredth of a millimetre. */
  readonly backlash: number;
  readonly perHundredth: number;
  /** Where each wanted shake falls; `undefined` outside the window. */
  readonly shakes: readonly { readonly shake: number; readonly distance: number | undefined }[];
  /** Over a whole turn with run-out and side shake: the two ends, the play there (mm, least), and whether it stays in the window. */
  readonly turn: {
    readonly spread: number;
    readonly nearest: number;
    readonly farthest: number;
    readonly leastBacklash: number;
    readonly greatestBacklash: number;
    readonly staysInside: boolean;
  };
  readonly doubts: readonly PairDoubt[];
}

/** The window of a pair, the first wheel driving. */
export function windowOfDepth(
  driver: Wheel,
  driven: Wheel,
  movement: Movement,
  options: WindowOptions = {},
): DepthWindow | NoContact {
  const forms = formsOfPair(driver, driven, movement);
  if (forms.kind === 'none') return forms;
  const depth = calculatedDepth(driver, driven, movement);
  // Teeth of other pitches or forms touch somewhere too, but no distance makes them run.
  if (depth.kind === 'mismatch') return { kind: 'none', why: depth.why };
  const calculated = depth.distance;
  const distance = options.distance ?? calculated;
  const spread =
    (driver.runOut + driven.runOut) / 2 +
    (options.sideShake ?? [sideShakeOf(driver, movement), sideShakeOf(driven, movement)]).reduce((a, b) => a + b, 0);
  return measured(forms, calculated, distance, spread, options.shakes ?? []);
}

/** How far an arbor's centre can stand from its place: half of the largest play of its bearings, mm. */
export function sideShakeOf(wheel: Wheel, movement: Movement): number {
  const arbor = movement.arbors.find((each) => each.id === wheel.arbor);
  return Math.max(0, ...(arbor?.bearings ?? []).map(({ bore, pivot }) => (bore - pivot) / 2));
}

/** The forms of a pair that can be brought into mesh. */
type Forms = Extract<PairForms, { kind: 'forms' }>;

function measured(
  { driver, driven, doubts }: Forms,
  calculated: number,
  distance: number,
  spread: number,
  wanted: readonly number[],
): DepthWindow | NoContact {
  const internal = driver.internal || driven.internal;
  const open = internal ? -1 : 1;
  const ends = endsOf(driver, driven, calculated, open);
  if (ends.kind === 'none') return ends;
  const reading = playAt(driver, driven, distance);
  const step = 0.005;
  const [before, after] = [playAt(driver, driven, distance - step), playAt(driver, driven, distance + step)];
  const [near, far] = [distance - open * spread, distance + open * spread];
  const lost = playAt(driver, driven, ends.lostAt - open * JUST_INSIDE * driver.module);
  const inside = (d: number) => open * (d - ends.deepest) >= -1e-9 && open * (ends.shallowest - d) >= -1e-9;
  const backlashAt = (d: number) => playAt(driver, driven, d)?.backlash ?? lost?.backlash ?? 0;
  return {
    kind: 'window',
    calculated,
    distance,
    internal,
    ...ends.window,
    backlash: reading?.backlash ?? lost?.backlash ?? 0,
    perHundredth: before && after ? after.backlash - before.backlash : 0,
    shakes: wanted.map((shake) => ({ shake, distance: distanceOfShake(driver, driven, ends, open, shake) })),
    turn: {
      spread,
      nearest: Math.min(near, far),
      farthest: Math.max(near, far),
      leastBacklash: backlashAt(near),
      greatestBacklash: backlashAt(far),
      staysInside: inside(near) && inside(far),
    },
    doubts,
  };
}

/** The two ends of a window without the readings between them, mm. */
interface Ends {
  readonly kind: 'ends';
  readonly deepest: number;
  readonly shallowest: number;
  readonly lostAt: number;
  readonly window: Pick<DepthWindow, 'deepest' | 'deepestBy' | 'shallowest' | 'shallowestBy' | 'lostAt'>;
}

/** Relative fineness of distances: a tenth of a micrometre in a metre, far below what can be set. */
const EVEN_TO = 1e-7;
/** Steps along the opening when something is first looked for, × module. */
const SEARCH_STEP = 0.1;
const SEARCHES = 60;
/** How far inside the loss of contact its last reading is taken, × module. */
const JUST_INSIDE = 1e-4;

function endsOf(driver: ToothForm, driven: ToothForm, calculated: number, open: number): Ends | NoContact {
  const { module } = driver;
  const least = (d: number) => playAt(driver, driven, d)?.least;
  const binding = bindingDistance(least, calculated, open, module);
  const lostAt = lostDistance(driver, driven, calculated, open);
  if (binding === undefined || lostAt === undefined || open * (lostAt - binding) <= 0) {
    return { kind: 'none', why: { kind: 'neverMesh', calculated } };
  }
  const clearance = clearancesOf(driver, driven, 0);
  // Clearances grow by the distance itself (or shrink, inside a ring).
  const bottoming =
    open > 0 ? -Math.min(clearance.driver, clearance.driven) : Math.min(clearance.driver, clearance.driven);
  const bottomsFirst = open * (bottoming - binding) > 0;
  const deepest = bottomsFirst ? bottoming : binding;
  const even = evenDistance(driver, driven, deepest, lostAt);
  const shallowest = even ?? lostAt;
  return {
    kind: 'ends',
    deepest,
    shallowest,
    lostAt,
    window: {
      deepest,
      deepestBy: bottomsFirst ? 'bottoming' : 'binding',
      shallowest,
      shallowestBy: even === undefined ? 'lost' : 'evenContact',
      lostAt,
    },
  };
}

/** Where the least play passes through nothing, searched from the calculated distance. */
function bindingDistance(
  least: (d: number) => number | undefined,
  from: number,
  open: number,
  module: number,
): number | undefined {
  const first = least(from);
  if (first === undefined) return undefined;
  const sense = first > 0 ? -open : open;
  let before = from;
  for (let i = 1; i <= SEARCHES; i++) {
    const next = from + sense * i * SEARCH_STEP * module;
    const value = next > 0 ? least(next) : undefined;
    if (value === undefined) return undefined;
    if (value > 0 !== first > 0 || value === 0) return rootBetween((d) => least(d) ?? Number.NaN, before, next, 1e-10);
    before = next;
  }
  return undefined;
}

/** Where contact is lost somewhere in the pitch, searched outwards from the calculated distance. */
function lostDistance(driver: ToothForm, driven: ToothForm, from: number, open: number): number | undefined {
  const over = (d: number) => reachBeyondPitch(driver, driven, d);
  if (over(from) <= 0) return undefined;
  // Outside each other the tips part at the latest at their reach; inside a ring the search walks inwards.
  if (open > 0) return rootBetween(over, from, farthestReach(driver, driven), EVEN_TO);
  let before = from;
  for (let i = 1; i <= SEARCHES; i++) {
    const next = from - i * 3 * SEARCH_STEP * driver.module;
    if (next <= 0) return undefined;
    if (over(next) <= 0) return rootBetween(over, before, next, EVEN_TO);
    before = next;
  }
  return undefined;
}

/** Where one pair's flanks touch for just one pitch; `undefined` when they never do, or always. */
function evenDistance(driver: ToothForm, driven: ToothForm, deepest: number, lostAt: number): number | undefined {
  const over = (d: number) => flankSpan(driver, driven, d) - 1;
  if (over(deepest) < 0 || over(lostAt) >= 0) return undefined;
  return rootBetween(over, deepest, lostAt, EVEN_TO);
}

function distanceOfShake(
  driver: ToothForm,
  driven: ToothForm,
  ends: Ends,
  open: number,
  shake: number,
): number | undefined {
  const over = (d: number) => (playAt(driver, driven, d)?.backlash ?? Number.NaN) - shake;
  const last = ends.lostAt - open * JUST_INSIDE * driver.module;
  if (!(over(ends.deepest) <= 0 && over(last) >= 0)) return undefined;
  return rootBetween(over, ends.deepest, last, EVEN_TO);
}
