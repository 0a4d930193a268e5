/** The depths of a movement, each looked at where it stands: numbers, window and words, as plain data and as text. */
import type { RuleId } from '../../movement/ids.ts';
import type { Movement, RuleOf, Wheel } from '../../movement/schema.ts';
import type { NoContact } from '../contact/contact.ts';
import { type ContactOfPair, contactOfPair } from '../contact/contactOfPair.ts';
import { type DepthWindow, windowOfDepth } from '../contact/windowOfDepth.ts';
import { calculatedDepth } from '../sizes/calculatedDepth.ts';
import { calledOf } from '../sizes/called.ts';
import { moduleOf } from '../sizes/moduleOf.ts';
import { isPinion, wheelsById } from '../sizes/partners.ts';
import { type DepthVerdict, type DepthWord, depthWords, verdictOf } from './depthWords.ts';
import { degreesText, mm } from './figures.ts';

/** One depth of the report, with all that was found of it. */
export interface DepthEntry {
  readonly rule: RuleId;
  readonly driver: string;
  readonly driven: string;
  /** The three values side by side, mm, and the one that was looked at. */
  readonly calculated: number;
  readonly measured?: number;
  readonly held?: number;
  readonly distance: number;
  readonly distanceFrom: 'planted' | 'calculated' | 'measured' | 'held';
  readonly contact: ContactOfPair;
  readonly window: DepthWindow | NoContact;
  readonly verdict: DepthVerdict;
  readonly words: readonly DepthWord[];
  readonly warns: readonly string[];
}

/** Every depth that was asked for, or why none could be told. */
export type DepthReport =
  | { readonly kind: 'report'; readonly depths: readonly DepthEntry[]; readonly text: string }
  | { readonly kind: 'unknown'; readonly says: string };

/** Which depths to report, and where they stand. */
export interface DepthReportOptions {
  /** Id of one depth rule, or "wheelA,wheelB"; all depths when absent. */
  readonly pair?: string;
  /** Planted centre distances by rule, mm; a rule that is not listed is looked at where its own values put it. */
  readonly distances?: ReadonlyMap<RuleId, number>;
  /** Wanted shakes along the pitch line, mm. */
  readonly shakes?: readonly number[];
}

type Depth = RuleOf<'depth'>;

/** Reports on one depth or on all of them. Rules whose wheels are missing are left to the reader of the file. */
export function depthReport(movement: Movement, options: DepthReportOptions = {}): DepthReport {
  const depths = movement.rules.filter((rule): rule is Depth => rule.kind === 'depth');
  const asked = options.pair === undefined ? depths : depths.filter((rule) => matches(rule, options.pair ?? ''));
  if (asked.length === 0 && options.pair !== undefined) {
    const known = depths.map((rule) => rule.id).join(', ');
    return {
      kind: 'unknown',
      says: `There is no depth "${options.pair}". Depths of this movement: ${known || 'none'}.`,
    };
  }
  const byId = wheelsById(movement);
  const entries = asked.flatMap((rule) => {
    const [driver, driven] = [byId.get(rule.wheels[0]), byId.get(rule.wheels[1])];
    return driver && driven ? [entryOf(rule, driver, driven, movement, options)] : [];
  });
  return { kind: 'report', depths: entries, text: entries.map(textOfDepth).join('\n\n') };
}

const matches = (rule: Depth, pair: string): boolean => rule.id === pair || rule.wheels.join(',') === pair;

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

function entryOf(
  rule: Depth,
  driver: Wheel,
  driven: Wheel,
  movement: Movement,
  options: DepthReportOptions,
): DepthEntry {
  const calculated = calculatedDepth(driver, driven, movement).distance;
  const at = distanceOf(rule, calculated, options.distances?.get(rule.id));
  const contact = contactOfPair(driver, driven, movement, at.distance);
  const window = windowOfDepth(driver, driven, movement, { distance: at.distance, shakes: options.shakes ?? [] });
  const names = {
    driver: calledOf(driver),
    driven: calledOf(driven),
    module: moduleOf(driver.size),
    involute: driver.form === 'involute' && driven.form === 'involute',
    straight: driver.form === 'triangular' || driven.form === 'triangular',
    stepsDown: driver.teeth < driven.teeth,
    leaves: isPinion(driven, movement) ? driven.teeth : undefined,
  };
  const runs = contact.kind === 'contact' && window.kind === 'window';
  const lost = contact.kind === 'none' ? contact.says : window.kind === 'none' ? window.says : '';
  return {
    rule: rule.id,
    driver: names.driver,
    driven: names.driven,
    calculated,
    ...(rule.measured ? { measured: rule.measured.value } : {}),
    ...(rule.held === undefined ? {} : { held: rule.held }),
    ...at,
    contact,
    window,
    verdict: runs ? verdictOf(contact, window, names) : 'lost',
    words: runs ? depthWords(contact, window, names) : [{ kind: 'lost', says: lost, ...remedyOf(window) }],
    warns: contact.kind === 'contact' ? contact.warns : window.kind === 'window' ? window.warns : [],
  };
}

function remedyOf(window: DepthWindow | NoContact): { remedy: string } | Record<never, never> {
  if (window.kind === 'none') return {};
  const [low, high] = [Math.min(window.deepest, window.shallowest), Math.max(window.deepest, window.shallowest)];
  return { remedy: `The pair runs between ${mm(low)} and ${mm(high)} mm.` };
}

/** One depth in lines of text, for the screen, the sheet or the command line. */
export function textOfDepth(entry: DepthEntry): string {
  const values = [
    `calculated ${mm(entry.calculated)}`,
    ...(entry.measured === undefined ? [] : [`measured ${mm(entry.measured)}`]),
    ...(entry.held === undefined ? [] : [`held ${mm(entry.held)}`]),
  ];
  const lines = [
    `${entry.driver} drives ${entry.driven} (${entry.rule}): ${entry.verdict} at ${mm(entry.distance)} mm, ${entry.distanceFrom}; ${values.join(', ')}`,
  ];
  const { contact, window } = entry;
  if (contact.kind === 'contact') {
    lines.push(
      `  shake ${mm(contact.backlash.least)} to ${mm(contact.backlash.greatest)} mm, ${degreesText(contact.play.least)} to ${degreesText(contact.play.greatest)} of ${entry.driven}`,
      `  pairs in contact ${contact.pairsInContact.toFixed(2)}; from ${contact.approach.toFixed(2)} pitch before the line of centres to ${contact.recess.toFixed(2)} after it; pressure angle ${degreesText(contact.pressureAngle.least)} to ${degreesText(contact.pressureAngle.greatest)}`,
      `  tip clearance ${mm(contact.tipClearance.driver)} mm (${entry.driver}), ${mm(contact.tipClearance.driven)} mm (${entry.driven}); unevenness ${mm(contact.error.along)} mm`,
    );
  }
  if (window.kind === 'window') {
    lines.push(
      `  window ${mm(window.deepest)} (${window.deepestBy}) to ${mm(window.shallowest)} (${window.shallowestBy === 'lost' ? 'contact lost' : 'even contact ends'}); ${mm(Math.abs(window.perHundredth))} mm of shake for each hundredth`,
      ...window.shakes.map(
        ({ shake, distance }) =>
          `  shake ${mm(shake)} falls at ${distance === undefined ? 'no distance of the window' : `${mm(distance)} mm`}`,
      ),
    );
  }
  for (const { says, remedy } of entry.words) lines.push(`  - ${says}${remedy ? ` ${remedy}` : ''}`);
  for (const warning of entry.warns) lines.push(`  ! ${warning}`);
  return lines.join('\n');
}
