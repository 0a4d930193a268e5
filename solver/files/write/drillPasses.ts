/** Which tools make which holes, in working order. */

import type { Hole } from '../../marking/index.ts';
import { decimalFixed, WORD_PLACES } from '../../movement/decimal.ts';
import type { Drilling } from '../../movement/schema.ts';

/** One tool and the holes it makes. */
export interface DrillPass {
  readonly work: 'spot' | 'drill' | 'ream';
  /** Place in the machine's tool table. */
  readonly tool: number;
  /** Tool diameter, mm; 0 for the spotting drill. */
  readonly diameter: number;
  readonly holes: readonly Hole[];
  /** The maker's own for this tool; the usual where absent. */
  readonly feed?: number | undefined;
  readonly speed?: number | undefined;
}

export type PassChoice = Partial<Pick<Drilling, 'tools' | 'reamAllowance' | 'spot'>>;

/** Reaming allowances by size, mm: common practice. */
const SMALL_HOLE = 5;

/** The passes in working order: spot, drills by size, reamers by size. Tool numbers that the maker gave are kept. */
export function passesOf(holes: readonly Hole[], choice: PassChoice = {}): readonly DrillPass[] {
  if (holes.length === 0) return [];
  const drills = new Map<string, Unnumbered>();
  const reamers = new Map<string, Unnumbered>();
  const push = (map: Map<string, Unnumbered>, pass: Omit<Unnumbered, 'holes'>, hole: Hole): void => {
    const key = [pass.diameter, pass.tool, pass.feed, pass.speed].join(' ');
    map.set(key, { ...pass, holes: [...(map.get(key)?.holes ?? []), hole] });
  };
  for (const hole of holes) {
    const { drill, isReamed, tool } = toolOf(hole, choice);
    push(drills, { work: 'drill', diameter: drill, tool: tool?.number, feed: tool?.feed, speed: tool?.speed }, hole);
    if (isReamed) push(reamers, { work: 'ream', diameter: rounded(hole.diameter) }, hole);
  }
  const bySize = (map: Map<string, Unnumbered>) => [...map.values()].sort((a, b) => a.diameter - b.diameter);
  const spots: readonly Unnumbered[] = (choice.spot ?? true) ? [{ work: 'spot', diameter: 0, holes }] : [];
  return numbered([...spots, ...bySize(drills), ...bySize(reamers)]);
}

/** A pass that has no tool number yet. */
type Unnumbered = Omit<DrillPass, 'tool'> & { readonly tool?: number | undefined };

const rounded = (mm: number): number => Number(decimalFixed(mm, WORD_PLACES));

/** The drill for a hole, whether a reamer follows, and the maker's line for its diameter. */
function toolOf(hole: Hole, { tools = [], reamAllowance }: PassChoice) {
  const size = rounded(hole.diameter);
  const tool = tools.find(({ diameter }) => rounded(diameter) === size);
  const usual = hole.diameter - (reamAllowance ?? (hole.diameter > SMALL_HOLE ? 0.2 : 0.1));
  // A hole smaller than what a reamer takes off is drilled to size.
  const isReamed = (tool?.ream ?? hole.finish === 'ream') && (tool?.drill ?? usual) > 0;
  return { drill: rounded(tool?.drill ?? (isReamed ? usual : hole.diameter)), isReamed, tool };
}

/** Tools without a number take the free ones, from 1. */
function numbered(passes: readonly Unnumbered[]): readonly DrillPass[] {
  const taken = new Set(passes.flatMap(({ tool }) => tool ?? []));
  let next = 1;
  const free = (): number => {
    while (taken.has(next)) next++;
    return next++;
  };
  return passes.map((pass) => ({ ...pass, tool: pass.tool ?? free(), holes: sorted(pass.holes) }));
}

/** From left to right, then upwards. */
const sorted = (holes: readonly Hole[]): readonly Hole[] =>
  [...holes].sort((a, b) => a.x - b.x || a.y - b.y || (a.id < b.id ? -1 : 1));
