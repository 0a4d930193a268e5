/** The files of the workshop, made on its own thread; a failure is told in the strip. */
import type { Movement } from '../../solver/movement/schema.ts';
import type { Bench } from '../state/bench.ts';
import { askWorkshop } from './askWorkshop.ts';
import { printing } from './printing.svelte.ts';
import type { MadeFile } from './questions.ts';

/** Every drawing, drill program, table and printed sheet. */
export async function workshopFiles(bench: Bench): Promise<readonly MadeFile[] | undefined> {
  const reply = await askWorkshop(bench.document.movement, { name: 'files', choice: printing.choice });
  if (reply.kind === 'answer') return reply.answer;
  bench.looking.tell('refused', `The files could not be made: ${reply.says}`);
  return undefined;
}

/** Everything for one job in one zip file. */
export async function handoverFile(bench: Bench, earlier?: Movement): Promise<MadeFile | undefined> {
  const { movement } = bench.document;
  const reply = await askWorkshop(movement, { name: 'handover', choice: printing.choice, earlier });
  if (reply.kind === 'failed') {
    bench.looking.tell('refused', `The handover could not be made: ${reply.says}`);
    return undefined;
  }
  const plain = movement.title
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')
    .toLowerCase();
  return { name: `${plain || 'movement'}-handover.zip`, content: reply.answer };
}
