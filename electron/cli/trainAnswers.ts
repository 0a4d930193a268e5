/** `depth`, `cutting`, `turns` and `counts`: what the rooms of teeth and train report, as answers of the command line. */

import type { RuleId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { cuttingReport } from '../../solver/teeth/cutting/index.ts';
import { type DepthVerdict, depthReport } from '../../solver/teeth/index.ts';
import { type CountsRequest, countsReport } from '../../solver/train/counts/index.ts';
import { turnsReport } from '../../solver/train/index.ts';
import { type Answer, Refusal } from './answer.ts';
import { inBlocks } from './columns.ts';
import { titleLine } from './plantAnswer.ts';

/** A report's text under the movement's title. */
function under(movement: Movement, text: string): string {
  return inBlocks([[titleLine(movement)], [text.trimEnd()]]);
}

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

/** Verdicts of a pair that turns; tight and free are told, and left to the maker. */
const TURNS: ReadonlySet<DepthVerdict> = new Set(['runs', 'tight', 'free']);

/** How each depth runs where it is planted. */
export function depthAnswer(placed: PlacedMovement, pair: string | undefined): Answer {
  const distances = plantedDistances(placed);
  const report = depthReport(placed.movement, { distances, ...(pair !== undefined && { pair }) });
  if (report.kind === 'unknown') throw new Refusal(report.says);
  const json = { title: placed.movement.title, depths: report.depths };
  const isFine = report.depths.every(({ verdict }) => TURNS.has(verdict));
  return { text: under(placed.movement, report.text), json, code: isFine ? 0 : 1 };
}

/** Blank, cutter and dividing of every wheel. */
export function cuttingAnswer({ movement }: PlacedMovement, wheel: string | undefined): Answer {
  const report = cuttingReport(movement, wheel === undefined ? {} : { wheel });
  if (report.kind === 'unknown') throw new Refusal(report.says);
  const json = { title: movement.title, wheels: report.wheels };
  return { text: under(movement, report.text), json, code: 0 };
}

/** Turns, senses and periods of every arbor, and what the hands show. */
export function turnsAnswer({ movement }: PlacedMovement): Answer {
  const { kind, text, data } = turnsReport(movement);
  return { text: under(movement, text), json: { title: movement.title, ...data }, code: kind === 'fine' ? 0 : 1 };
}

/** Tooth numbers for a wanted ratio. */
export function countsAnswer(request: CountsRequest): Answer {
  const { kind, text, data } = countsReport(request);
  if (kind === 'refused') throw new Refusal(data.says);
  return { text, json: { kind, ...data }, code: kind === 'found' ? 0 : 1 };
}
