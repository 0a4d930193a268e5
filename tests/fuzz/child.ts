/** The process that tries spoiled files: numbers from the first argument on, for as many seconds as the second says. */
import { mutated } from './mutate.ts';
import type { Told } from './run.ts';
import { sourceTexts } from './sourceTexts.ts';
import { tryFile } from './tryFile.ts';

const [from = '0', seconds = '1'] = process.argv.slice(2);
const texts = sourceTexts();
const end = performance.now() + Number(seconds) * 1000;
for (let number = Number(from); performance.now() < end; number++) {
  const { kind, fault, longest } = tryFile(mutated(texts[number % texts.length] ?? '', number), () =>
    performance.now(),
  );
  const megabytes = process.memoryUsage().rss / 2 ** 20;
  const told: Told = { number, kind, ...(fault !== undefined && { fault }), ...longest, megabytes };
  await new Promise((done) => process.send?.(told, () => done(undefined)));
}
process.disconnect();
