/** Copy, cut and paste of sub-trains, within this window. */

import type { PartId } from '../../solver/movement/ids.ts';
import type { Movement } from '../../solver/movement/schema.ts';
import type { Bench } from '../state/bench.svelte.ts';
import type { Command } from './command.ts';
import { partsCopied, pasteEdit } from './copying.ts';

/** How far copies stand from their originals on screen, CSS pixels. */
const AWAY_PX = 36;
const hasChosen = (bench: Bench): boolean => bench.chosen.length > 0 && !bench.settingDown;

function copy(bench: Bench): void {
  bench.copied = partsCopied(bench.movement, bench.chosen);
  bench.tell('done', `Copied: ${bench.chosen.map(bench.nameOf).join(', ')}`);
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
      const says = bench.chosen.map(bench.nameOf).join(', ');
      copy(bench);
      bench.change(`cut ${says}`, [{ kind: 'remove', ids: bench.chosen }], { chosen: [] });
    },
  },
  paste: {
    id: 'paste',
    group: 'change',
    says: 'Paste',
    describes: 'Set down what was copied, beside it',
    keys: ['Mod+V'],
    possible: (bench) => bench.copied !== undefined && !bench.settingDown,
    run: (bench) => {
      if (!bench.copied) return;
      const before = bench.movement;
      if (!bench.change('paste', [pasteEdit(before, bench.copied, AWAY_PX / bench.view.scale)])) return;
      bench.choose(newPoints(before, bench.movement));
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
