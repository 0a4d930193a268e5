/** Long work on clearance: what is asked, told and answered, and the two desks that ask for it. */

import type { FindPlantingOptions, NoPlanting, PlantingAnswer } from '../../solver/clearance/findPlanting/index.ts';
import type { Finding } from '../../solver/clearance/index.ts';
import type { NoRehearsal, RehearsalOptions, RehearsalReport } from '../../solver/clearance/rehearsal/index.ts';
import type { SafePlaces } from '../../solver/clearance/safe/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import { WorkDesk } from '../desk/desk.ts';
import type { TriedCure } from '../state/derive/followingCheck.ts';

/** A planting that was found: the edit that makes it. */
export type OfferedPlanting = Pick<PlantingAnswer, 'edit' | 'gapsLeft' | 'surplus'>;

/** What a search for plantings gives. */
export type PlantingsFound =
  | { readonly kind: 'plantings'; readonly answers: readonly OfferedPlanting[]; readonly tries: number }
  | { readonly kind: 'none'; readonly why: NoPlanting };

/** Findings, with cures of the first ones by their keys. */
export interface SlowCheck {
  readonly findings: readonly Finding[];
  readonly cures: readonly (readonly [string, readonly TriedCure[]])[];
}

/** Each kind of question with what it asks, tells on the way and answers. */
export interface ClearanceWork {
  findPlanting: {
    asks: FindPlantingOptions;
    /** `best`: the smallest surplus so far, mm. */
    progress: { readonly done: number; readonly best?: number };
    answer: PlantingsFound;
  };
  rehearse: {
    asks: RehearsalOptions;
    progress: { readonly done: number };
    answer: RehearsalReport | { readonly kind: 'none'; readonly why: NoRehearsal };
  };
  /** Tells what is found quickly on the way, and answers with cures. */
  slowCheck: { asks: undefined; progress: SlowCheck; answer: SlowCheck };
  safePlaces: { asks: PointId; progress: never; answer: SafePlaces };
}

const start = (): Worker => new Worker(new URL('./clearanceWorker.ts', import.meta.url), { type: 'module' });

/** What the maker asks for and waits for. */
export const clearanceDesk = new WorkDesk<ClearanceWork>(start, 'Try it again.');
/** What the window looks for by itself while it is idle; it never keeps the maker waiting. */
export const idleDesk = new WorkDesk<ClearanceWork>(start, 'Change something to have it looked for again.');
