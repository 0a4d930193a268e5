/** Copy, cut and paste of sub-trains, within this window. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Bench } from '../state/bench.ts';
import type { Command } from './command.ts';
import { partsCopied, pasteEdit } from './copying.ts';

/** How far copies stand from their originals on screen, CSS pixels. */
const AWAY_PX = 36;
const hasChosen = (bench: Bench): boolean => bench.looking.chosen.length > 0 && !bench.hand.settingDown;

function copy(bench: Bench): void {
  bench.hand.copy(partsCopied(bench.document.movement, bench.looking.chosen));
  bench.looking.tell('done', `Copied: ${bench.looking.chosen.map(bench.nameOf).join(', ')}`);
}

/** Points that stand in the movement after a change and did not before. */
function newPoints(before: Movement, after: Movement): PartId[] {
  const old = new Set<string>([...before.arbors, ...before.posts, ...before.marks].map(({ id }) => id));
  return [...after.arbors, ...after.posts, ...after.marks].map(({ id }) => id).filter((id) => !old.has(id));
}

export const copyCommands = {
  copy: {
    id: 'copy',
    group: 'change',
    says: 'Copy',
    describes: 'Copy what is chosen, with its wheels and the rules among it',
    keys: ['Mod+C'],
    possible: hasChosen,
    run: copy,
  },
  cut: {
    id: 'cut',
    group: 'change',
    says: 'Cut',
    describes: 'Copy what is chosen and delete it',
    keys: ['Mod+X'],
    possible: hasChosen,
    run: (bench) => {
      const says = bench.looking.chosen.map(bench.nameOf).join(', ');
      copy(bench);
      bench.change(`cut ${says}`, [{ kind: 'remove', ids: bench.looking.chosen }], { chosen: [] });
    },
  },
  paste: {
    id: 'paste',
    group: 'change',
    says: 'Paste',
    describes: 'Set down what was copied, beside it',
    keys: ['Mod+V'],
    possible: (bench) => bench.hand.copied !== undefined && !bench.hand.settingDown,
    run: (bench) => {
      if (!bench.hand.copied) return;
      const before = bench.document.movement;
      if (!bench.change('paste', [pasteEdit(before, bench.hand.copied, AWAY_PX / bench.looking.view.scale)])) return;
      bench.looking.choose(newPoints(before, bench.document.movement));
    },
  },
  find: {
    id: 'find',
    group: 'view',
    says: 'Find',
    describes: 'Find a part by its name',
    keys: ['Mod+F', '/'],
    possible: () => true,
    run: () => {
      document.querySelector<HTMLInputElement>('[data-find]')?.focus();
    },
  },
} satisfies Record<string, Command>;
