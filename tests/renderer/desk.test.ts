/** The desk: one contract for work off the thread. A worker of the same process stands in for the browser's. */
import { describe, expect, it } from 'vitest';
import type { Asked, DeskTold } from '../../renderer/desk/contract.ts';
import { type DeskWorker, WorkDesk } from '../../renderer/desk/desk.ts';
import { type Service, type ServingScope, serve, sparingSteps } from '../../renderer/desk/serve.ts';
import { emptyMovement } from '../../solver/movement/index.ts';
import type { PlacedMovement } from '../../solver/planting/placed.ts';
import { runSteps, type Steps } from '../../solver/steps.ts';

interface Kinds {
  count: { asks: number; progress: number; answer: string };
  title: { asks: undefined; progress: never; answer: string };
  fail: { asks: string; progress: never; answer: never };
}

/** Every planting that was looked at, by worker. */
const looked: PlacedMovement[][] = [];

function serviceOf(seen: PlacedMovement[]): Service<Kinds> {
  return {
    *count(to) {
      for (let i = 1; i <= to; i++) yield i;
      return `counted to ${to}`;
    },
    // biome-ignore lint/correctness/useYield: it is over in one step
    *title(_nothing, placed) {
      seen.push(placed());
      return placed().movement.title;
    },
    // biome-ignore lint/correctness/useYield: it breaks
    *fail(says) {
      throw new Error(says);
    },
  };
}

/** A worker that answers when it is let, one message after another, and takes copies as a real one does. */
class StandIn implements DeskWorker {
  onmessage: DeskWorker['onmessage'] = null;
  onerror: DeskWorker['onerror'] = null;
  readonly asked: Asked[] = [];
  ended = false;
  private readonly scope: ServingScope;
  private next = 0;

  constructor() {
    const seen: PlacedMovement[] = [];
    looked.push(seen);
    this.scope = { onmessage: null, postMessage: (told) => this.send(told) };
    serve<Kinds>(this.scope, serviceOf(seen));
  }

  postMessage(asked: unknown): void {
    this.asked.push(structuredClone(asked) as Asked);
  }

  terminate(): void {
    this.ended = true;
  }

  /** Answers all that was asked so far. */
  work(): void {
    while (!this.ended && this.next < this.asked.length) {
      this.scope.onmessage?.({ data: this.asked[this.next++] } as MessageEvent<Asked>);
    }
  }

  breakOff(message: string): void {
    this.onerror?.call(undefined as never, { message } as ErrorEvent);
  }

  private send(told: DeskTold): void {
    if (this.ended) return;
    this.onmessage?.call(undefined as never, { data: structuredClone(told) } as MessageEvent<DeskTold>);
  }
}

function office() {
  const workers: StandIn[] = [];
  const desk = new WorkDesk<Kinds>(() => {
    const worker = new StandIn();
    workers.push(worker);
    return worker;
  }, 'Try it again.');
  const heard: string[] = [];
  const listener = (name: string) => ({
    progress: (progress: unknown) => heard.push(`${name}… ${progress}`),
    answer: (answer: string) => heard.push(`${name}: ${answer}`),
    failed: (says: string) => heard.push(`${name} failed: ${says}`),
  });
  return { desk, workers, heard, listener };
}

describe('the desk', () => {
  it('starts no worker before it is asked, tells progress in order, then the answer once', () => {
    const { desk, workers, heard, listener } = office();
    expect(workers).toHaveLength(0);
    desk.ask('count', 2, listener('a'));
    desk.ask('count', 1, listener('b'));
    workers[0]?.work();
    expect(heard).toEqual(['a… 1', 'a… 2', 'a: counted to 2', 'b… 1', 'b: counted to 1']);
    expect(workers).toHaveLength(1);
  });

  it('tells a failure of the work in its words, and goes on with the next question', () => {
    const { desk, workers, heard, listener } = office();
    desk.ask('fail', 'no such wheel', listener('a'));
    desk.ask('count', 0, listener('b'));
    workers[0]?.work();
    expect(heard).toEqual(['a failed: no such wheel', 'b: counted to 0']);
  });

  it('sends a movement once and plants it once, however often it is asked about', () => {
    const { desk, workers, heard, listener } = office();
    const [one, other] = [
      { ...emptyMovement(), title: 'One' },
      { ...emptyMovement(), title: 'Other' },
    ];
    desk.ask('title', undefined, listener('a'), one);
    desk.ask('count', 0, listener('n'));
    desk.ask('title', undefined, listener('b'), one);
    workers[0]?.work();
    desk.ask('title', undefined, listener('c'), other);
    desk.ask('title', undefined, listener('d'), one);
    workers[0]?.work();
    expect(heard).toEqual(['a: One', 'n: counted to 0', 'b: One', 'c: Other', 'd: One']);
    expect(workers[0]?.asked.map(({ about }) => about?.movement?.title)).toEqual([
      'One',
      undefined,
      undefined,
      'Other',
      'One',
    ]);
    const [first, second, third, fourth] = looked.at(-1) ?? [];
    expect(second).toBe(first);
    expect(third).not.toBe(first);
    expect(fourth).not.toBe(first);
  });

  it('hears nothing more of what is cancelled; what others wait for is asked anew, with its movement', () => {
    const { desk, workers, heard, listener } = office();
    const movement = { ...emptyMovement(), title: 'Kept' };
    const cancel = desk.ask('count', 5, listener('long'));
    desk.ask('title', undefined, listener('other'), movement);
    cancel();
    expect(workers.map(({ ended }) => ended)).toEqual([true, false]);
    for (const worker of workers) worker.work();
    expect(heard).toEqual(['other: Kept']);
    cancel();
    expect(workers).toHaveLength(2);
  });

  it('tells everybody who waits when the worker breaks off, and starts another for the next question', () => {
    const { desk, workers, heard, listener } = office();
    desk.ask('count', 5, listener('a'));
    desk.ask('count', 6, listener('b'));
    workers[0]?.breakOff('out of memory');
    expect(heard).toEqual([
      'a failed: The work broke off: out of memory. Try it again.',
      'b failed: The work broke off: out of memory. Try it again.',
    ]);
    desk.ask('title', undefined, listener('c'), emptyMovement());
    workers[1]?.work();
    expect(heard).toHaveLength(3);
  });

  it('refuses to work on a movement that never came', () => {
    const told: DeskTold[] = [];
    const scope: ServingScope = { onmessage: null, postMessage: (each) => told.push(each) };
    serve<Kinds>(scope, serviceOf([]));
    scope.onmessage?.({
      data: { ticket: 1, name: 'title', asks: undefined, about: { number: 7 } },
    } as MessageEvent<Asked>);
    expect(told).toEqual([{ ticket: 1, kind: 'failed', says: 'movement 7 was not sent with its question' }]);
  });
});

describe('sparing steps', () => {
  it('tell no more often than an eye can follow, the first at once, and give the same answer', () => {
    function* countSteps(): Steps<number, string> {
      for (let i = 0; i < 100; i++) yield i;
      return 'done';
    }
    let now = 0;
    const told: number[] = [];
    const steps = sparingSteps(countSteps(), () => (now += 10));
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) {
        expect(step.value).toBe('done');
        break;
      }
      told.push(step.value);
    }
    expect(told[0]).toBe(0);
    expect(told.length).toBeGreaterThan(5);
    expect(told.length).toBeLessThan(20);
    expect(runSteps(sparingSteps(countSteps(), () => 0))).toBe('done');
  });
});
