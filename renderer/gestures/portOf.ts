/** The port of the bench of this window. */
import type { Bench } from '../state/bench.ts';
import type { GesturePort } from './port.ts';

/** Reads the bench anew at every use. */
export function portOf(bench: Bench): GesturePort {
  const { document, derived, looking, hand } = bench;
  return {
    get speaker() {
      return bench.speaker;
    },
    get movement() {
      return document.movement;
    },
    get settled() {
      return derived.settled;
    },
    get placed() {
      return derived.placed;
    },
    get sizes() {
      return derived.sizes;
    },
    get view() {
      return looking.view;
    },
    get chosen() {
      return looking.chosen;
    },
    get handle() {
      return looking.handle;
    },
    get isRehearsing() {
      return hand.rehearsing;
    },
    get settingDown() {
      return hand.settingDown?.down;
    },
    nameOf: bench.nameOf,
    lengthSays: bench.lengthSays,
    begin: (gesture) => hand.begin(gesture),
    change: (says, edits, after) => bench.change(says, edits, after),
    choose: (parts, adding) => looking.choose(parts, adding),
    hover: (part) => looking.hover(part),
    takeHandle: (part, ref) => looking.takeHandle(part, ref),
    pan: (dx, dy) => looking.pan(dx, dy),
    zoom: (factor, at) => looking.zoom(factor, at),
    tell: (kind, says) => looking.tell(kind, says),
    untell: () => looking.untell(),
  };
}
