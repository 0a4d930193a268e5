/** The depths of a movement, each looked at where it stands: numbers, window, and what is worth a remark. */
import type { RuleId, WheelId } from '../../movement/ids.ts';
import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import type { NoContact } from '../contact/contact.ts';
import { type ContactOfPair, contactOfPair, type PairDoubt } from '../contact/contactOfPair.ts';
import { faultsOfPair } from '../contact/faultsOfPair.ts';
import { type DepthWindow, windowOfDepth } from '../contact/windowOfDepth.ts';
import { kindOf } from '../forms/kinds/formKinds.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import { moduleOf } from '../sizes/moduleOf.ts';
import { isPinion, wheelsById } from '../sizes/partners.ts';
import { type DepthPair, type DepthRemark, type DepthVerdict, depthRemarks, verdictOf } from './depthRemarks.ts';

/** One depth of the report, with all that was found of it. */
export interface DepthEntry {
  readonly rule: RuleId;
  readonly driver: WheelId;
  readonly driven: WheelId;
  /** The three values side by side, mm, and the one that was looked at. */
  readonly calculated: number;
  readonly measured?: number;
  readonly held?: number;
  readonly distance: number;
  readonly distanceFrom: 'planted' | 'calculated' | 'measured' | 'held';
  readonly contact: ContactOfPair;
  readonly window: DepthWindow | NoContact;
  readonly verdict: DepthVerdict;
  /** The gravest first. */
  readonly remarks: readonly DepthRemark[];
  readonly doubts: readonly PairDoubt[];
}

/** Which depths to report, and where they stand. */
export interface DepthReportOptions {
  /** Depth rules that are asked for; all when absent. */
  readonly rules?: readonly RuleId[];
  /** Planted centre distances by rule, mm; a rule that is not listed is looked at where its own values put it. */
  readonly distances?: ReadonlyMap<RuleId, number>;
  /** Wanted shakes along the pitch line, mm. */
  readonly shakes?: readonly number[];
}

type Depth = RuleOf<'depth'>;

/** Reports on depths in the order of the rules. Rules whose wheels are missing are left to the reader of the file. */
export function depthReport(movement: Movement, options: DepthReportOptions = {}): readonly DepthEntry[] {
  const byId = wheelsById(movement);
  return movement.rules.flatMap((rule) => {
    if (rule.kind !== 'depth' || options.rules?.includes(rule.id) === false) return [];
    const [driver, driven] = [byId.get(rule.wheels[0]), byId.get(rule.wheels[1])];
    return driver && driven ? [entryOf(rule, driver, driven, movement, options)] : [];
  });
}

function distanceOf(
  rule: Depth,
  calculated: number,
  planted: number | undefined,
): Pick<DepthEntry, 'distance' | 'distanceFrom'> {
  if (planted !== undefined) return { distance: planted, distanceFrom: 'planted' };
  if (rule.use === 'measured' && rule.measured) return { distance: rule.measured.value, distanceFrom: 'measured' };
  if (rule.use === 'held' && rule.held !== undefined) return { distance: rule.held, distanceFrom: 'held' };
  return { distance: calculated + rule.allowance, distanceFrom: 'calculated' };
}

/** Farther from the calculated distance than this, × module, no setting is meant but teeth of another size. */
const FAR_FROM = 1;
const TURNS: ReadonlySet<DepthVerdict> = new Set(['runs', 'tight', 'free']);
const BINDS: ReadonlySet<DepthVerdict> = new Set(['binds', 'bottoms']);

/** The size with which the counts of a pair stand at a distance, in the terms in which it is stated. */
function sizeRemark({ size }: Wheel, calculated: number, distance: number): DepthRemark {
  const by = distance / calculated;
  const figure = (value: number): number => Number(value.toPrecision(5));
  const fits =
    'module' in size
      ? { module: figure(size.module * by) }
      : 'diametralPitch' in size
        ? { diametralPitch: figure(size.diametralPitch / by) }
        : { circularPitch: figure(size.circularPitch * by) };
  return { kind: 'otherSize', distance, calculated, size: fits };
}

function entryOf(
  rule: Depth,
  driver: Wheel,
  driven: Wheel,
  movement: Movement,
  options: DepthReportOptions,
): DepthEntry {
  const calculated = calculatedDepth(driver, driven, movement).distance;
  const at = distanceOf(rule, calculated, options.distances?.get(rule.id));
  const { never, fullForms } = faultsOfPair(driver, driven, movement);
  const [unfit] = never;
  const contact = unfit
    ? ({ kind: 'none', why: unfit } as const)
    : contactOfPair(driver, driven, movement, at.distance);
  const window = windowOfDepth(driver, driven, movement, { distance: at.distance, shakes: options.shakes ?? [] });
  const pair: DepthPair = {
    wheels: [driver.id, driven.id],
    module: moduleOf(driver.size),
    ...habitsOf(driver, driven),
    stepsDown: driver.teeth < driven.teeth,
    leaves: isPinion(driven, movement) ? driven.teeth : undefined,
  };
  const runs = contact.kind === 'contact' && window.kind === 'window';
  const verdict = runs ? verdictOf(contact, window, pair) : 'lost';
  const isFar = Math.abs(at.distance - calculated) > FAR_FROM * pair.module && !TURNS.has(verdict);
  return {
    rule: rule.id,
    driver: driver.id,
    driven: driven.id,
    calculated,
    ...(rule.measured ? { measured: rule.measured.value } : {}),
    ...(rule.held === undefined ? {} : { held: rule.held }),
    ...at,
    contact,
    window,
    verdict: unfit ? 'unfit' : verdict,
    remarks: unfit
      ? never.map((why) => ({ kind: 'lost', why }))
      : [
          ...(fullForms && BINDS.has(verdict) ? [{ kind: 'fullForms', full: fullForms } as const] : []),
          ...(runs ? depthRemarks(contact, window, pair) : lostRemarks(contact, window)),
          ...(isFar ? [sizeRemark(driver, calculated, at.distance)] : []),
        ],
    doubts: contact.kind === 'contact' ? contact.doubts : window.kind === 'window' ? window.doubts : [],
  };
}

/** What the two forms ask of a depth together: the larger shakes, and the remarks that both are worth. */
function habitsOf(driver: Wheel, driven: Wheel): Pick<DepthPair, 'shake' | 'remarks'> {
  const [a, b] = [kindOf(driver), kindOf(driven)];
  return {
    shake: { tight: Math.max(a.shake.tight, b.shake.tight), free: Math.max(a.shake.free, b.shake.free) },
    remarks: {
      engaging: a.remarks.engaging && b.remarks.engaging,
      corners: a.remarks.corners && b.remarks.corners,
    },
  };
}

/** No contact here: why, and between what distances the pair would run. */
function lostRemarks(contact: ContactOfPair, window: DepthWindow | NoContact): readonly DepthRemark[] {
  const fault = contact.kind === 'none' ? contact : window.kind === 'none' ? window : undefined;
  if (!fault) return [];
  if (window.kind === 'none') return [{ kind: 'lost', why: fault.why }];
  const { deepest, shallowest } = window;
  const runs = [Math.min(deepest, shallowest), Math.max(deepest, shallowest)] as const;
  return [{ kind: 'lost', why: fault.why, runs }];
}
