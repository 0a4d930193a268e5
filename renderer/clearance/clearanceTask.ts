/** What the clearance worker is asked and what it answers, and how it is started; calling the result stops it. */
import type { Finding, FindPlantingOptions, NoPlanting, PlantingAnswer } from '../../solver/clearance/index.ts';
import type { NoRehearsal, RehearsalOptions, RehearsalReport } from '../../solver/clearance/rehearsal/index.ts';
import type { SafePlaces } from '../../solver/clearance/safe/index.ts';
import type { PointId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { TriedCure } from '../state/derive/followingCheck.ts';

/** The long work that can be asked for. */
export type ClearanceTask =
  | { readonly kind: 'findPlanting'; readonly movement: Movement; readonly options: FindPlantingOptions }
  | { readonly kind: 'rehearse'; readonly movement: Movement; readonly options: RehearsalOptions }
  | { readonly kind: 'slowCheck'; readonly movement: Movement }
  | { readonly kind: 'safePlaces'; readonly movement: Movement; readonly point: PointId };

/** A planting that was found: the edit that makes it. */
export type OfferedPlanting = Pick<PlantingAnswer, 'edit' | 'gapsLeft' | 'surplus'>;

/** What the worker sends while it works and when it ends. */
export type ClearanceMessage =
  /** `best`: of a search for plantings, the smallest surplus so far, mm. */
  | { readonly kind: 'progress'; readonly done: number; readonly best?: number }
  | { readonly kind: 'plantings'; readonly answers: readonly OfferedPlanting[]; readonly tries: number }
  | { readonly kind: 'rehearsed'; readonly report: RehearsalReport }
  | {
      readonly kind: 'checked';
      readonly findings: readonly Finding[];
      /** Cures of the first findings, by their keys. */
      readonly cures: readonly (readonly [string, readonly TriedCure[]])[];
      /** Whether more is still being found out. */
      readonly more: boolean;
    }
  | { readonly kind: 'safe'; readonly places: SafePlaces }
  | { readonly kind: 'noPlanting'; readonly why: NoPlanting }
  | { readonly kind: 'noRehearsal'; readonly why: NoRehearsal }
  | { readonly kind: 'failed'; readonly says: string };

/** Starts the worker and listens to it; the function that is returned stops it. */
export function startClearance(task: ClearanceTask, listen: (message: ClearanceMessage) => void): () => void {
  const worker = new Worker(new URL('./clearanceWorker.ts', import.meta.url), { type: 'module' });
  worker.onmessage = ({ data }: MessageEvent<ClearanceMessage>) => {
    const goesOn = data.kind === 'progress' || (data.kind === 'checked' && data.more);
    if (!goesOn) worker.terminate();
    listen(data);
  };
  worker.onerror = (event) => {
    worker.terminate();
    listen({ kind: 'failed', says: `The work broke off: ${event.message}. Try it again.` });
  };
  worker.postMessage(task);
  return () => worker.terminate();
}
