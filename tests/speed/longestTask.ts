/** The longest task of a page's main thread in processor time, from the browser's own trace. */
import type { CDPSession, Page } from '@playwright/test';

interface TraceEvent {
  readonly name: string;
  readonly ph: string;
  readonly pid: number;
  readonly tid: number;
  readonly ts: number;
  /** Microseconds on the clock, and of the thread's processor time. */
  readonly dur?: number;
  readonly tdur?: number;
  readonly args?: { readonly name?: string };
}

export class LongestTask {
  private readonly session: CDPSession;
  private readonly events: TraceEvent[] = [];

  private constructor(session: CDPSession) {
    this.session = session;
    session.on('Tracing.dataCollected', ({ value }) => {
      this.events.push(...(value as unknown as TraceEvent[])); // the protocol leaves the shape of events open
    });
  }

  /** Begins to trace the browser of a page, which must be its only page. */
  static async watch(page: Page): Promise<LongestTask> {
    const browser = page.context().browser();
    if (!browser) throw new Error('The page has no browser of its own.');
    const session = await browser.newBrowserCDPSession();
    const watch = new LongestTask(session);
    const traceConfig = { includedCategories: ['toplevel', '__metadata'] };
    await session.send('Tracing.start', { transferMode: 'ReportEvents', traceConfig });
    return watch;
  }

  /** Ends the trace: the longest task since the beginning, ms of processor time. */
  async end(): Promise<number> {
    const complete = new Promise((done) => this.session.once('Tracing.tracingComplete', done));
    await this.session.send('Tracing.end');
    await complete;
    await this.session.detach();
    const mains = this.events.filter(({ name, args }) => name === 'thread_name' && args?.name === 'CrRendererMain');
    const tasks = this.events.filter(
      ({ ph, pid, tid, tdur }) =>
        ph === 'X' && tdur !== undefined && mains.some((main) => main.pid === pid && main.tid === tid),
    );
    if (tasks.length === 0) throw new Error('The trace tells of no task of the page.');
    return Math.max(...tasks.map(({ tdur = 0 }) => tdur)) / 1000;
  }
}
