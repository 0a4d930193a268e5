/** Moving what is chosen by keys: the numeric twin of a short drag, with all rules kept and nothing snapped to. */

import { startDrag } from '../../solver/planting/index.ts';
import { pointOf } from '../state/derive/parts.ts';
import { nudgeSeveral } from './dragSeveral.ts';
import { chosenCase } from './outline/chosenOutline.ts';
import { nudgeOutline } from './outline/nudgeOutline.ts';
import type { GesturePort } from './port.ts';

/** Moves what is chosen by (dx, dy) mm, as far as its rules let it; presses that follow each other are one step. */
export function nudgeChosen(port: GesturePort, dx: number, dy: number): void {
  if (chosenCase(port)) {
    nudgeOutline(port, dx, dy);
    return;
  }
  if (port.chosen.length > 1) {
    nudgeSeveral(port, dx, dy);
    return;
  }
  const [only] = port.chosen;
  const id = only === undefined ? undefined : pointOf(port.settled, only);
  const place = id === undefined ? undefined : port.settled.places.get(id);
  if (!place) return;
  const name = port.nameOf(place.id);
  if (place.state !== 'loose') {
    port.tell('refused', `${name} is ${place.state}: leave one of its rules out to move it.`);
    return;
  }
  const session = startDrag(port.settled, place.id);
  session.to(place.x + dx, place.y + dy);
  const moved = session.release();
  if (moved) port.change(`move ${name}`, [moved], { group: `nudge ${place.id}` });
  else port.tell('refused', `${name} cannot move that way: its rules hold it.`);
}
