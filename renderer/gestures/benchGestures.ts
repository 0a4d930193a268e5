/** What pointers do on the bench: choose, drag what is loose, set down, frame several, move and zoom the sheet. */

import type { PointId } from '../../solver/movement/ids.ts';
import { contestedSays } from '../../solver/words/planting/index.ts';
import { type Hit, hitAt, pointsWithin } from '../bench/hitTest.ts';
import type { Bench } from '../state/bench.svelte.ts';
import { panBy, zoomAt } from '../state/view.ts';

import { dragPoint, prepareDrag } from './dragPoint.ts';
import { dragSeveral } from './dragSeveral.ts';
import { grabOutline, outlineUnder, tapOutline } from './outline/takeOutline.ts';
import { type Gesture, PointerHub, type Press } from './pointerHub.ts';
import { pointsOfChosen } from './severalDrag.ts';

/** Listens on the sheet until it is disposed of. */
export function benchGestures(sheet: HTMLElement, bench: Bench): { dispose(): void } {
  const under = (press: Press): Hit | undefined =>
    hitAt({
      placed: bench.placed,
      sizes: bench.sizes,
      view: bench.view,
      pixel: press.pixel,
      finger: press.kind === 'touch',
    });
  const hub = new PointerHub(sheet, {
    pressed(start) {
      const point = bench.settingDown ? undefined : under(start)?.point;
      if (point && bench.settled.places.get(point)?.state === 'loose') prepareDrag(bench, point);
    },
    grab(start) {
      if (bench.settingDown) return undefined;
      const shape = start.adding ? undefined : grabOutline(bench, start);
      if (shape) return shape;
      const hit = under(start);
      const several = hit?.point && !start.adding ? pointsOfChosen(bench.settled, bench.chosen) : [];
      if (hit?.point && several.length > 1 && several.includes(hit.point)) return dragSeveral(bench, several, start);
      if (hit?.point) return grabPoint(bench, hit.point, start);
      return start.adding ? frameSeveral(bench, start) : undefined;
    },
    tap(press, times) {
      sheet.focus({ preventScroll: true });
      if (bench.settingDown) {
        bench.settingDown.aim(bench, press.pixel, press.free);
        bench.settingDown.keep(bench);
        return;
      }
      if (!press.adding && tapOutline(bench, press, times)) return;
      const hit = under(press);
      if (!hit) {
        if (!press.adding) bench.choose([]);
        return;
      }
      // The second tap on a wheel's body means its arbor; a tap on the cross always does.
      const part = hit.kind === 'wheel' && times > 1 && hit.point ? hit.point : hit.part;
      bench.choose([part], press.adding);
    },
    menu(press) {
      if (bench.settingDown) return;
      const hit = under(press);
      const isChosen = hit && bench.chosen.some((part) => part === hit.part || part === hit.point);
      // The menu acts on what was pressed; several stay chosen when it is one of them.
      if (!isChosen) bench.choose(hit ? [hit.part] : []);
    },
    hover(press) {
      if (bench.settingDown && press) {
        bench.settingDown.aim(bench, press.pixel, press.free);
        return;
      }
      bench.hovered = press ? under(press)?.part : undefined;
      sheet.style.cursor = press && outlineUnder(bench, press) ? 'move' : '';
    },
    pan(dx, dy) {
      bench.view = panBy(bench.view, dx, dy);
    },
    zoom(at, factor) {
      bench.view = zoomAt(bench.view, at, factor);
    },
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
  bench.abandonGesture = () => hub.abandon();
  return {
    dispose() {
      control.abort();
      hub.dispose();
    },
  };
}

/** A loose point is dragged; a planted one stays, and it is told why. */
function grabPoint(bench: Bench, point: PointId, start: Press): Gesture {
  const place = bench.settled.places.get(point);
  if (place?.state === 'loose') return dragPoint(bench, point, start);
  bench.choose([point]);
  const name = bench.nameOf(point);
  bench.tell(
    'refused',
    place?.state === 'contested'
      ? `${name} cannot be dragged. ${contestedSays(bench.settled, point, bench.speaker)} Change a rule there or leave it out.`
      : `${name} is planted: its rules hold it here. Change a number on the right, or leave a rule out, to move it.`,
  );
  return { move: () => undefined, finish: () => undefined, abandon: () => undefined };
}

/** A frame drawn with Shift held chooses every place inside it. */
function frameSeveral(bench: Bench, start: Press): Gesture {
  return {
    move(press) {
      bench.frame = { from: start.pixel, to: press.pixel };
    },
    finish(press) {
      bench.frame = undefined;
      bench.choose(pointsWithin(bench.placed, bench.view, start.pixel, press.pixel), true);
    },
    abandon() {
      bench.frame = undefined;
    },
  };
}
