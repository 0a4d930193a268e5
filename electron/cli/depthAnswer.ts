/** `depthwright depth`: how each depth runs where it is planted. */
import type { RuleId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { type DepthEntry, type DepthVerdict, depthReport } from '../../solver/teeth/index.ts';
import { depthLines, pairDoubtSays, remarkWords, type Speaker, speakerOf } from '../../solver/words/index.ts';
import { type Answer, CommandRefusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { meantBy, partsMeant } from './meant.ts';
import { titleLine } from './plantAnswer.ts';

/** Centre distances as planted, mm, of every depth whose arbors stand somewhere. */
function plantedDistances({ movement, places }: PlacedMovement): Map<RuleId, number> {
  const arborOf = new Map(movement.wheels.map(({ id, arbor }) => [id, arbor]));
  const distances = new Map<RuleId, number>();
  for (const rule of movement.rules) {
    if (rule.kind !== 'depth') continue;
    const [a, b] = rule.wheels.map((wheel) => {
      const arbor = arborOf.get(wheel);
      return arbor && places.get(arbor);
    });
    if (a && b) distances.set(rule.id, Math.hypot(b.x - a.x, b.y - a.y));
  }
  return distances;
}

/** The depth that is asked for: by its id, its words, or its two wheels with a comma between, each by name or id. */
function rulesMeant(pair: string, { rules, wheels }: Movement, speaker: Speaker): readonly RuleId[] {
  const depths = rules.filter((rule) => rule.kind === 'depth');
  const byRule = meantBy(
    pair,
    depths.map(({ id }) => id),
    speaker.rule,
  );
  if (byRule.length > 0) return byRule;
  // A name may hold a comma itself: every comma is tried as the one between.
  const commas = [...pair].flatMap((letter, at) => (letter === ',' ? [at] : []));
  const pairs = commas.map((at) => [pair.slice(0, at), pair.slice(at + 1)].map((word) => word.trim()));
  return pairs.flatMap(([first = '', second = '']) => {
    const [a, b] = [partsMeant(first, wheels, speaker), partsMeant(second, wheels, speaker)];
    const areMeant = ([p, q]: readonly [string, string]): boolean =>
      (a.some((id) => id === p) && b.some((id) => id === q)) || (a.some((id) => id === q) && b.some((id) => id === p));
    return depths.filter((rule) => areMeant(rule.wheels)).map(({ id }) => id);
  });
}

function noDepth(pair: string, { rules }: Movement, speaker: Speaker): CommandRefusal {
  const known = rules.filter(({ kind }) => kind === 'depth').map(({ id }) => speaker.rule(id));
  return new CommandRefusal(`There is no depth "${pair}". Depths of this movement: ${known.join('; ') || 'none'}.`);
}

/** An entry for another program: all its fields, with the words beside the kinds. */
function entryJson({ remarks, doubts, driver, driven, ...entry }: DepthEntry, speaker: Speaker): object {
  return {
    ...entry,
    driver: speaker.name(driver),
    driven: speaker.name(driven),
    wheels: [driver, driven],
    words: remarks.map((remark) => ({ ...remark, ...remarkWords(remark, speaker) })),
    warns: doubts.map((doubt) => pairDoubtSays(doubt, speaker)),
  };
}

/** Verdicts of a pair that turns; tight and free are told, and left to the maker. */
const TURNS: ReadonlySet<DepthVerdict> = new Set(['runs', 'tight', 'free']);

/** How each depth runs where it is planted. */
export function depthAnswer(placed: PlacedMovement, pair: string | undefined): Answer {
  const { movement } = placed;
  const speaker = speakerOf(movement, { minus: '-' });
  const rules = pair === undefined ? undefined : rulesMeant(pair, movement, speaker);
  if (pair !== undefined && rules?.length === 0) throw noDepth(pair, movement, speaker);
  const entries = depthReport(movement, { distances: plantedDistances(placed), ...(rules && { rules }) });
  return {
    text: inBlocks([[titleLine(movement)], ...entries.map((entry) => depthLines(entry, speaker))]),
    json: { title: movement.title, depths: entries.map((entry) => entryJson(entry, speaker)) },
    code: entries.every(({ verdict }) => TURNS.has(verdict)) ? 0 : 1,
  };
}
