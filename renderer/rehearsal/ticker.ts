/** A clock for what turns on the screen: it stops when the window is hidden, and goes in steps under reduced motion. */

/** Seconds between two steps where less motion is wanted: a still picture each second. */
const STEP = 1;

/** Does the maker want less motion? */
export const wantsLessMotion = (): boolean => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/**
 * Calls `advance` with the seconds that went by, until the returned function is called.
 *
 * @param hidden called once when the window is hidden; the clock has stopped then
 */
export function startTicker(advance: (seconds: number) => void, hidden: () => void): () => void {
  const control = new AbortController();
  let frame = 0;
  let last = performance.now();
  const turn = (now: number): void => {
    advance((now - last) / 1000);
    last = now;
    frame = requestAnimationFrame(turn);
  };
  const steps = wantsLessMotion() ? setInterval(() => advance(STEP), STEP * 1000) : undefined;
  if (steps === undefined) frame = requestAnimationFrame(turn);
  const stop = (): void => {
    control.abort();
    cancelAnimationFrame(frame);
    clearInterval(steps);
  };
  document.addEventListener(
    'visibilitychange',
    () => {
      if (document.visibilityState !== 'hidden') return;
      stop();
      hidden();
    },
    { signal: control.signal },
  );
  return stop;
}
