/** Serves a desk from inside a worker: one question after another, each as steps that are told while they go on. */
import type { Movement } from '../../solver/movement/schema.ts';
import { plantMovement } from '../../solver/planting/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import type { Steps } from '../../solver/steps.ts';
import type { Asked, DeskTold, Works } from './contract.ts';

/** How each kind of work is done. `placed` plants the movement that the question is about, once for all its questions. */
export type Service<Kinds extends Works<Kinds>> = {
  readonly [Name in keyof Kinds]: (
    asks: Kinds[Name]['asks'],
    placed: () => PlacedMovement,
  ) => Steps<Kinds[Name]['progress'], Kinds[Name]['answer']>;
};

/** What serving needs of a worker's own scope. */
export interface ServingScope {
  onmessage: ((event: MessageEvent<Asked>) => void) | null;
  postMessage(told: DeskTold): void;
}

/** The last movement that was asked about, planted when it is first looked at. */
class Planted {
  private known: { readonly number: number; readonly movement: Movement; placed?: PlacedMovement } | undefined;

  /** Takes over the movement that came with a question; gives what plants the one it is about. */
  for({ about }: Asked): () => PlacedMovement {
    if (about?.movement) this.known = { number: about.number, movement: about.movement };
    const { known } = this;
    return () => {
      if (!about || known?.number !== about.number) {
        throw new Error(`movement ${about?.number ?? 'of no number'} was not sent with its question`);
      }
      known.placed ??= plantMovement(known.movement);
      return known.placed;
    };
  }
}

/** Time between two tellings of progress, ms: what an eye can follow. */
const TELL_EVERY = 80;

/** The same work, telling no more often than an eye can follow. */
export function* sparingSteps<Progress, Result>(
  steps: Steps<Progress, Result>,
  now: () => number = () => performance.now(),
): Steps<Progress, Result> {
  let told = Number.NEGATIVE_INFINITY;
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (now() - told < TELL_EVERY) continue;
    told = now();
    yield step.value;
  }
}

/** Answers what is asked, from now on. */
export function serve<Kinds extends Works<Kinds>>(scope: ServingScope, service: Service<Kinds>): void {
  const planted = new Planted();
  scope.onmessage = ({ data }) => {
    const { ticket } = data;
    try {
      const steps = service[data.name as keyof Kinds](data.asks, planted.for(data)); // the desk of this worker asks by its names
      for (let step = steps.next(); ; step = steps.next()) {
        if (step.done) {
          scope.postMessage({ ticket, kind: 'answer', answer: step.value });
          return;
        }
        scope.postMessage({ ticket, kind: 'progress', progress: step.value });
      }
    } catch (error) {
      scope.postMessage({ ticket, kind: 'failed', says: error instanceof Error ? error.message : String(error) });
    }
  };
}
