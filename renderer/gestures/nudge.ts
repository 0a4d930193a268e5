/** Moving what is chosen by keys: the numeric twin of a short drag, with all rules kept and nothing snapped to. */

import { startDrag } from '../../solver/planting/index.ts';
import type { Bench } from '../state/bench.svelte.ts';
import { pointOf } from '../state/derive/parts.ts';
import { nudgeSeveral } from './dragSeveral.ts';
import { nudgeOutline } from './outline/nudgeOutline.ts';

/** Moves what is chosen by (dx, dy) mm, as far as its rules let it; presses that follow each other are one step. */
export function nudgeChosen(bench: Bench, dx: number, dy: number): void {
  if (bench.outlines.part) {
    nudgeOutline(bench, dx, dy);
    return;
  }
  if (bench.chosen.length > 1) {
    nudgeSeveral(bench, dx, dy);
    return;
  }
  const [only] = bench.chosen;
  const id = only === undefined ? undefined : pointOf(bench.settled, only);
  const place = id === undefined ? undefined : bench.settled.places.get(id);
  if (!place) return;
  const name = bench.nameOf(place.id);
  if (place.state !== 'loose') {
    bench.tell('refused', `${name} is ${place.state}: leave one of its rules out to move it.`);
    return;
  }
  const session = startDrag(bench.settled, place.id);
  session.to(place.x + dx, place.y + dy);
  const moved = session.release();
  if (moved) bench.change(`move ${name}`, [moved], { group: `nudge ${place.id}` });
  else bench.tell('refused', `${name} cannot move that way: its rules hold it.`);
}
