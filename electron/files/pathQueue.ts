/** One queue per path: a second job on a file waits until the first is done, whatever its outcome. */
const tails = new Map<string, Promise<unknown>>();

/** Runs `job` after all earlier jobs of the same path. Gives what the job gives; a failed job holds up nobody. */
export function inPathQueue<Result>(path: string, job: () => Promise<Result>): Promise<Result> {
  const before = tails.get(path) ?? Promise.resolve();
  const result = before.then(job, job);
  // The queue itself never rejects: the caller of the failed job is told, the next one only waits for its end.
  const tail = result.then(
    () => undefined,
    () => undefined,
  );
  tails.set(path, tail);
  void tail.then(() => {
    if (tails.get(path) === tail) tails.delete(path);
  });
  return result;
}
