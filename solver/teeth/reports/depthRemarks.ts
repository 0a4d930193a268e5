/** What is worth a remark in a depth, each with the numbers that a remedy needs (mm, radians, shares 0 … 1). */
import type { WheelId } from '../../movement/ids.ts';
import type { Wheel } from '../../movement/schema.ts';
import type { PairContact } from '../contact/contact.ts';
import type { DepthWindow } from '../contact/windowOfDepth.ts';
import type { FullForms, PairFault } from '../pairFaults.ts';

/** One word for the whole of a depth. */
export type DepthVerdict = 'unfit' | 'runs' | 'tight' | 'free' | 'binds' | 'bottoms' | 'shallow' | 'lost';

/** From the distance that was looked at to one that cures. */
export interface DepthMove {
  readonly from: number;
  readonly to: number;
}

/** Shake along the pitch line: mm, and × module. */
export interface ShakeFigure {
  readonly shake: number;
  readonly inModules: number;
}

/** A remark on a depth. `move` sets it right; `driven` and the like name the wheel that it is said of. */
export type DepthRemark =
  | {
      readonly kind: 'bottoming';
      /** Whose tips stand in whose roots, and by how much. */
      readonly tips: WheelId;
      readonly roots: WheelId;
      readonly by: number;
      readonly move: DepthMove;
    }
  | { readonly kind: 'binding'; readonly overlap: number; readonly move: DepthMove }
  | { readonly kind: 'drop'; readonly driven: WheelId; readonly angle: number; readonly move: DepthMove }
  | { readonly kind: 'butting'; readonly driven: WheelId; readonly angle: number; readonly move: DepthMove }
  /** `wanted`: the least shake that counts as free enough. */
  | { readonly kind: 'tight'; readonly shake: ShakeFigure; readonly wanted: number; readonly move: DepthMove }
  | { readonly kind: 'free'; readonly shake: ShakeFigure }
  | { readonly kind: 'right'; readonly shake: ShakeFigure }
  /** Off the calculated distance, and what each hundredth of a millimetre does to the shake. */
  | {
      readonly kind: 'shallow' | 'deep';
      readonly by: number;
      readonly calculated: number;
      readonly perHundredth: number;
    }
  | {
      readonly kind: 'engaging';
      readonly share: number;
      readonly stepsDown: boolean;
      readonly fewLeaves: boolean;
    }
  | { readonly kind: 'corner'; readonly share: number }
  | { readonly kind: 'uneven'; readonly driven: WheelId; readonly along: number; readonly angle: number }
  | {
      readonly kind: 'turn';
      readonly nearest: number;
      readonly farthest: number;
      readonly shake: readonly [number, number];
      readonly ends: 'inside' | 'deep' | 'shallow';
      /** The distance that stays free over the turn, for wheels that bind. */
      readonly wide: number;
      readonly wheels: readonly [WheelId, WheelId];
    }
  /** Two full wheel forms that bind where their pitch circles touch. */
  | { readonly kind: 'fullForms'; readonly full: FullForms }
  /** A distance that is far from the calculated one: the size with which these counts would stand there. */
  | { readonly kind: 'otherSize'; readonly distance: number; readonly calculated: number; readonly size: Wheel['size'] }
  /** No contact; `runs`: the distances between which the pair would run. */
  | { readonly kind: 'lost'; readonly why: PairFault; readonly runs?: readonly [number, number] };

/** What the remarks need to know of the pair. */
export interface DepthPair {
  /** Driver, driven. */
  readonly wheels: readonly [WheelId, WheelId];
  readonly module: number;
  /** Shakes below and above which it is tight and free, × module. */
  readonly shake: { readonly tight: number; readonly free: number };
  /** Whether engaging friction and bearing corners are worth a remark with these forms. */
  readonly remarks: { readonly engaging: boolean; readonly corners: boolean };
  /** The driver has the fewer teeth, as in motion work. */
  readonly stepsDown: boolean;
  /** Leaves of the driven wheel when it is a pinion. */
  readonly leaves: number | undefined;
}

/** Shares of the pitch above which engaging friction and bearing corners are worth a remark. */
const ENGAGING_FROM = 0.15;
const CORNERS_FROM = 0.02;
/** Unevenness worth a remark, × module. */
const UNEVEN_FROM = 0.05;
/** Distance from the calculated one that is worth a remark, mm: half of the hundredth that is told with it. */
const OFF_FROM = 0.005;
/** Pinions of fewer leaves rub before the line of centres more than others: common practice. */
const FEW_LEAVES = 10;

/** Remarks on a running or binding contact, the gravest first. */
export function depthRemarks(contact: PairContact, window: DepthWindow, pair: DepthPair): readonly DepthRemark[] {
  return [
    ...hindrances(contact, window, pair),
    ...placeRemarks(contact, window, pair),
    // Of an overlap there is no action to speak of.
    ...(contact.binds ? [] : actionRemarks(contact, pair)),
    ...turnRemarks(window, pair),
  ];
}

function hindrances(contact: PairContact, window: DepthWindow, { wheels }: DepthPair): DepthRemark[] {
  const remarks: DepthRemark[] = [];
  const [driver, driven] = wheels;
  const deepest = { from: contact.distance, to: window.deepest };
  const shallowest = { from: contact.distance, to: window.shallowest };
  if (contact.bottoms) {
    const clearance = contact.tipClearance;
    const [tips, roots] = clearance.driver < clearance.driven ? [driver, driven] : [driven, driver];
    const by = -Math.min(clearance.driver, clearance.driven);
    remarks.push({ kind: 'bottoming', tips, roots, by, move: deepest });
  }
  if (contact.binds) remarks.push({ kind: 'binding', overlap: -contact.backlash.least, move: deepest });
  if (contact.drop > 0) remarks.push({ kind: 'drop', driven, angle: contact.drop, move: shallowest });
  if (contact.butting > 0) remarks.push({ kind: 'butting', driven, angle: contact.butting, move: shallowest });
  return remarks;
}

function placeRemarks(contact: PairContact, window: DepthWindow, pair: DepthPair): DepthRemark[] {
  const remarks: DepthRemark[] = [];
  const shakes = shakeRemark(contact, window, pair);
  if (shakes) remarks.push(shakes);
  const off = (contact.internal ? -1 : 1) * (contact.distance - window.calculated);
  if (Math.abs(off) >= OFF_FROM) {
    const { calculated } = window;
    const perHundredth = Math.abs(window.perHundredth);
    remarks.push({ kind: off > 0 ? 'shallow' : 'deep', by: Math.abs(off), calculated, perHundredth });
  }
  return remarks;
}

function shakeRemark(contact: PairContact, window: DepthWindow, pair: DepthPair): DepthRemark | undefined {
  const { module } = pair;
  const { mean } = contact.backlash;
  const shake = { shake: mean, inModules: mean / module };
  const wanted = pair.shake.tight * module;
  if (!contact.binds && mean < wanted) {
    const add = window.perHundredth === 0 ? 0 : ((wanted - mean) / window.perHundredth) * 0.01;
    return { kind: 'tight', shake, wanted, move: { from: contact.distance, to: contact.distance + add } };
  }
  if (mean > pair.shake.free * module) return { kind: 'free', shake };
  return contact.binds ? undefined : { kind: 'right', shake };
}

function actionRemarks(contact: PairContact, pair: DepthPair): DepthRemark[] {
  const remarks: DepthRemark[] = [];
  if (contact.engaging >= ENGAGING_FROM && pair.remarks.engaging) {
    const fewLeaves = pair.leaves !== undefined && pair.leaves < FEW_LEAVES;
    remarks.push({ kind: 'engaging', share: contact.engaging, stepsDown: pair.stepsDown, fewLeaves });
  }
  if (contact.onCorners >= CORNERS_FROM && pair.remarks.corners) {
    remarks.push({ kind: 'corner', share: contact.onCorners });
  }
  if (contact.error.along >= UNEVEN_FROM * pair.module) {
    remarks.push({ kind: 'uneven', driven: pair.wheels[1], ...contact.error });
  }
  return remarks;
}

function turnRemarks(window: DepthWindow, { wheels }: DepthPair): DepthRemark[] {
  const { turn, internal, deepest } = window;
  if (turn.spread < 1e-6) return [];
  const isDeep = internal ? turn.farthest > deepest : turn.nearest < deepest;
  return [
    {
      kind: 'turn',
      nearest: turn.nearest,
      farthest: turn.farthest,
      shake: [turn.leastBacklash, turn.greatestBacklash],
      ends: turn.staysInside ? 'inside' : isDeep ? 'deep' : 'shallow',
      wide: internal ? deepest - turn.spread : deepest + turn.spread,
      wheels,
    },
  ];
}

/** One word for the whole. */
export function verdictOf(contact: PairContact, window: DepthWindow, pair: DepthPair): DepthVerdict {
  if (contact.bottoms) return 'bottoms';
  if (contact.binds) return 'binds';
  if (contact.drop > 0 || contact.butting > 0) return 'shallow';
  const past = (contact.internal ? -1 : 1) * (contact.distance - window.shallowest);
  if (past > 1e-6) return 'shallow';
  if (contact.backlash.mean < pair.shake.tight * pair.module) return 'tight';
  return contact.backlash.mean > pair.shake.free * pair.module ? 'free' : 'runs';
}
