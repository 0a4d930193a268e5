/**
 * Asks a worker for long work. The worker is started at the first question and kept: questions are answered in the
 * order asked, and a movement that it has planted is not planted again. Cancelling ends the worker; what others still
 * wait for is asked anew of the next one.
 */
import type { Movement } from '../../solver/movement/schema.ts';
import type { Asked, DeskTold, Listener, Work, Works } from './contract.ts';

/** What a desk needs of a worker. */
export type DeskWorker = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror'>;

/** A question that has no answer yet. */
interface Waiting {
  readonly name: PropertyKey;
  readonly asks: unknown;
  readonly movement: Movement | undefined;
  readonly listener: Listener<Work>;
}

/** Keeps one worker, numbers its questions and brings the answers back to who asked. */
export class WorkDesk<Kinds extends Works<Kinds>> {
  private readonly start: () => DeskWorker;
  private readonly advice: string;
  private worker: DeskWorker | undefined;
  /** The movement that the worker has, and its number. */
  private sent: { readonly movement: Movement; readonly number: number } | undefined;
  private numbers = 0;
  private tickets = 0;
  private readonly waiting = new Map<number, Waiting>();

  /** @param advice what the maker can do when the work breaks off: "Try it again." */
  constructor(start: () => DeskWorker, advice: string) {
    this.start = start;
    this.advice = advice;
  }

  /** Asks for one piece of work, about a movement where it needs one; calling the result cancels it. */
  ask<Name extends keyof Kinds>(
    name: Name,
    asks: Kinds[Name]['asks'],
    listener: Listener<Kinds[Name]>,
    movement?: Movement,
  ): () => void {
    const ticket = ++this.tickets;
    // What this kind of work tells is what its listener takes: the worker answers by the name that was asked.
    const wait: Waiting = { name, asks, movement, listener: listener as unknown as Listener<Work> };
    this.waiting.set(ticket, wait);
    this.send(ticket, wait);
    return () => this.cancel(ticket);
  }

  private send(ticket: number, { name, asks, movement }: Waiting): void {
    this.worker ??= this.started();
    const asked: Asked = { ticket, name, asks, about: movement && this.about(movement) };
    this.worker.postMessage(asked);
  }

  private about(movement: Movement): Asked['about'] {
    if (this.sent?.movement === movement) return { number: this.sent.number };
    this.sent = { movement, number: ++this.numbers };
    return { number: this.sent.number, movement };
  }

  private started(): DeskWorker {
    const worker = this.start();
    worker.onmessage = ({ data }: MessageEvent<DeskTold>) => this.told(data);
    worker.onerror = (event) => {
      const lost = [...this.waiting.values()];
      this.waiting.clear();
      this.dismiss();
      for (const { listener } of lost) listener.failed(`The work broke off: ${event.message}. ${this.advice}`);
    };
    return worker;
  }

  private told(told: DeskTold): void {
    const wait = this.waiting.get(told.ticket);
    if (!wait) return;
    if (told.kind === 'progress') {
      wait.listener.progress?.(told.progress);
      return;
    }
    this.waiting.delete(told.ticket);
    if (told.kind === 'answer') wait.listener.answer(told.answer);
    else wait.listener.failed(told.says);
  }

  private cancel(ticket: number): void {
    if (!this.waiting.delete(ticket)) return;
    this.dismiss();
    for (const [other, wait] of this.waiting) this.send(other, wait);
  }

  private dismiss(): void {
    this.worker?.terminate();
    this.worker = undefined;
    this.sent = undefined;
  }
}
