/** What pointers do on the bench: choose, drag what is loose, set down, frame several, move and zoom the sheet. */

import type { PointId } from '../../solver/movement/ids.ts';
import { contestedSays } from '../../solver/words/planting/index.ts';
import { type Hit, hitAt, pointsWithin } from '../bench/hitTest.ts';

import { dragPoint, prepareDrag } from './dragPoint.ts';
import { dragSeveral } from './dragSeveral.ts';
import { grabOutline, outlineUnder, tapOutline } from './outline/takeOutline.ts';
import { type Gesture, PointerHub, type Press } from './pointerHub.ts';
import type { GesturePort } from './port.ts';
import { pointsOfChosen } from './severalDrag.ts';

/** Ears on the sheet. */
export interface Listening {
  /** Gives up what pointers hold; false where they held nothing. */
  abandon(): boolean;
  dispose(): void;
}

/** Listens on the sheet until it is disposed of. */
export function benchGestures(sheet: HTMLElement, port: GesturePort): Listening {
  const under = (press: Press): Hit | undefined =>
    hitAt({
      placed: port.placed,
      sizes: port.sizes,
      view: port.view,
      pixel: press.pixel,
      finger: press.kind === 'touch',
    });
  const hub = new PointerHub(sheet, {
    pressed(start) {
      const point = port.settingDown ? undefined : under(start)?.point;
      if (point && port.settled.places.get(point)?.state === 'loose') prepareDrag(port, point);
    },
    grab(start) {
      if (port.settingDown) return undefined;
      const shape = start.adding ? undefined : grabOutline(port, start);
      if (shape) return shape;
      const hit = under(start);
      const several = hit?.point && !start.adding ? pointsOfChosen(port.settled, port.chosen) : [];
      if (hit?.point && several.length > 1 && several.includes(hit.point)) return dragSeveral(port, several, start);
      if (hit?.point) return grabPoint(port, hit.point, start);
      return start.adding ? frameSeveral(port, start) : undefined;
    },
    tap(press, times) {
      sheet.focus({ preventScroll: true });
      if (port.settingDown) {
        port.settingDown.aim(press.pixel, press.free);
        port.settingDown.keep();
        return;
      }
      if (!press.adding && tapOutline(port, press, times)) return;
      const hit = under(press);
      if (!hit) {
        if (!press.adding) port.choose([]);
        return;
      }
      // The second tap on a wheel's body means its arbor; a tap on the cross always does.
      const part = hit.kind === 'wheel' && times > 1 && hit.point ? hit.point : hit.part;
      port.choose([part], press.adding);
    },
    menu(press) {
      if (port.settingDown) return;
      const hit = under(press);
      const isChosen = hit && port.chosen.some((part) => part === hit.part || part === hit.point);
      // The menu acts on what was pressed; several stay chosen when it is one of them.
      if (!isChosen) port.choose(hit ? [hit.part] : []);
    },
    hover(press) {
      if (port.settingDown && press) {
        port.settingDown.aim(press.pixel, press.free);
        return;
      }
      port.hover(press ? under(press)?.part : undefined);
      sheet.style.cursor = press && outlineUnder(port, press) ? 'move' : '';
    },
    pan: (dx, dy) => port.pan(dx, dy),
    zoom: (at, factor) => port.zoom(factor, at),
  });
  const control = new AbortController();
  const { signal } = control;
  const alt = (event: KeyboardEvent): void => {
    if (event.key === 'Alt') {
      hub.repeat({ free: event.type === 'keydown' });
      event.preventDefault();
    }
  };
  window.addEventListener('keydown', alt, { signal });
  window.addEventListener('keyup', alt, { signal });
  return {
    abandon: () => hub.abandon(),
    dispose() {
      control.abort();
      hub.dispose();
    },
  };
}

/** A loose point is dragged; a planted one stays, and it is told why. */
function grabPoint(port: GesturePort, point: PointId, start: Press): Gesture {
  const place = port.settled.places.get(point);
  if (place?.state === 'loose') return dragPoint(port, point, start);
  port.choose([point]);
  const name = port.nameOf(point);
  port.tell(
    'refused',
    place?.state === 'contested'
      ? `${name} cannot be dragged. ${contestedSays(port.settled, point, port.speaker)} Change a rule there or leave it out.`
      : `${name} is planted: its rules hold it here. Change a number on the right, or leave a rule out, to move it.`,
  );
  return { move: () => undefined, finish: () => undefined, abandon: () => undefined };
}

/** A frame drawn with Shift held chooses every place inside it. */
function frameSeveral(port: GesturePort, start: Press): Gesture {
  return {
    move(press) {
      port.begin({ kind: 'frame', from: start.pixel, to: press.pixel });
    },
    finish(press) {
      port.begin(undefined);
      port.choose(pointsWithin(port.placed, port.view, start.pixel, press.pixel), true);
    },
    abandon() {
      port.begin(undefined);
    },
  };
}
