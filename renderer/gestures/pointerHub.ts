/**
 * Turns raw pointer, wheel and touch events into gestures, and knows nothing of what they do.
 *
 * One pointer may pick something up (`grab` decides), or moves the sheet. Two fingers move and zoom the sheet and
 * give up whatever one of them had begun. Nothing starts before the pointer has travelled a few pixels; a press
 * that did not travel is a tap. Esc and a lost pointer end a gesture without a trace.
 */
import type { Point } from '../../solver/geometry/index.ts';

/** A pointer that is down, or a tap. */
export interface Press {
  /** CSS pixels from the upper left corner of the bench. */
  readonly pixel: Point;
  readonly kind: 'mouse' | 'pen' | 'touch';
  /** Adds to what is chosen. */
  readonly adding: boolean;
  /** Suspends snapping. */
  readonly free: boolean;
}

/** A gesture under way: called for every move, then once to finish or give up. */
export interface Gesture {
  move(press: Press): void;
  finish(press: Press): void;
  abandon(): void;
}

/** What pointers lead to. */
export interface HubActions {
  /** A pointer went down, and may begin to travel: time to make ready what a gesture will need. */
  pressed(start: Press): void;
  /** The gesture of a pointer that began to travel from `start`; none when it should move the sheet. */
  grab(start: Press): Gesture | undefined;
  tap(press: Press, times: number): void;
  /** A menu is about to open for what lies under the pointer. */
  menu(press: Press): void;
  hover(press: Press | undefined): void;
  pan(dx: number, dy: number): void;
  zoom(at: Point, factor: number): void;
}

/** Travel before a press becomes a drag, CSS pixels; a finger is allowed more. */
const TRAVEL_PX = { mouse: 4, pen: 6, touch: 10 } as const;
/** A finger or pen that rests this long opens the menu of what lies under it, ms; the habit of touch screens. */
const LONG_PRESS_MS = 500;
/** A second tap within this time and distance counts as the second of two. */
const DOUBLE_MS = 350;
const DOUBLE_PX = 12;

/** The first step of a mouse wheel is at least this long, of two fingers on a trackpad shorter, CSS pixels (measured). */
const NOTCH_PX = 40;
/** Steps that follow within this belong to one movement of the fingers, ms. */
const ONE_SCROLL_MS = 250;

/** Tells two fingers on a trackpad, which move the sheet, from the wheel of a mouse, which zooms: the first step decides. */
class ScrollKind {
  private lastMs = Number.NEGATIVE_INFINITY;
  private pans = false;

  isPan(dx: number, dy: number, atMs: number): boolean {
    if (atMs - this.lastMs > ONE_SCROLL_MS) this.pans = dx !== 0 || Math.abs(dy) < NOTCH_PX;
    this.lastMs = atMs;
    return this.pans;
  }
}

/** Follows every pointer on the bench from press to release. */
export class PointerHub {
  private readonly element: HTMLElement;
  private readonly actions: HubActions;
  private readonly pressed = new Map<number, { start: Press; last: Point; button: number }>();
  private gesture: Gesture | undefined;
  /** The pointer whose travel moves the sheet or a part; tapping is over then. */
  private travelling = false;
  private lastTap = { atMs: Number.NEGATIVE_INFINITY, pixel: { x: 0, y: 0 }, times: 0 };
  private lastPress: Press | undefined;
  private resting: ReturnType<typeof setTimeout> | undefined;
  private readonly scroll = new ScrollKind();
  private readonly stopListening: () => void;

  constructor(element: HTMLElement, actions: HubActions) {
    this.element = element;
    this.actions = actions;
    const control = new AbortController();
    const { signal } = control;
    element.addEventListener('pointerdown', (event) => this.down(event), { signal });
    element.addEventListener('pointermove', (event) => this.moved(event), { signal });
    element.addEventListener('pointerup', (event) => this.up(event), { signal });
    element.addEventListener('pointercancel', (event) => this.lost(event), { signal });
    element.addEventListener('pointerleave', () => actions.hover(undefined), { signal });
    // Before the menu opens: it is the menu of what was pressed, however it was asked for.
    element.addEventListener('contextmenu', (event) => this.menuAsked(event), { signal, capture: true });
    element.addEventListener('wheel', (event) => this.wheeled(event), { signal, passive: false });
    window.addEventListener('blur', () => this.abandon(), { signal });
    this.stopListening = () => control.abort();
  }

  /** Gives up the gesture under way, if there is one. */
  abandon(): boolean {
    const had = this.gesture !== undefined;
    this.gesture?.abandon();
    this.gesture = undefined;
    return had;
  }

  /** Repeats the last move, for a key that changes its meaning while the pointer rests. */
  repeat(change: Partial<Pick<Press, 'free'>>): void {
    if (this.gesture && this.lastPress) {
      this.lastPress = { ...this.lastPress, ...change };
      this.gesture.move(this.lastPress);
    }
  }

  dispose(): void {
    this.abandon();
    clearTimeout(this.resting);
    this.stopListening();
  }

  private pressOf(event: PointerEvent): Press {
    const box = this.element.getBoundingClientRect();
    const kind = event.pointerType === 'touch' || event.pointerType === 'pen' ? event.pointerType : 'mouse';
    return {
      pixel: { x: event.clientX - box.left, y: event.clientY - box.top },
      kind,
      adding: event.shiftKey,
      free: event.altKey,
    };
  }

  private down(event: PointerEvent): void {
    const start = this.pressOf(event);
    // The menu comes by an event of its own; Ctrl and a press is the menu of a Mac.
    if (event.button === 2 || (event.button === 0 && event.ctrlKey)) return;
    this.element.setPointerCapture(event.pointerId);
    this.pressed.set(event.pointerId, { start, last: start.pixel, button: event.button });
    if (this.pressed.size === 2) {
      this.abandon();
      this.travelling = true;
      return;
    }
    this.travelling = false;
    if (event.button === 0) this.actions.pressed(start);
    this.awaitLongPress(event, start);
  }

  /** One finger or pen that neither travels nor leaves asks for the menu. */
  private awaitLongPress({ pointerId, clientX, clientY }: PointerEvent, { kind }: Press): void {
    clearTimeout(this.resting);
    if (kind === 'mouse' || this.pressed.size !== 1) return;
    this.resting = setTimeout(() => {
      if (this.travelling || !this.pressed.delete(pointerId)) return;
      const asked = new MouseEvent('contextmenu', { bubbles: true, cancelable: true, clientX, clientY, button: 2 });
      this.element.dispatchEvent(asked);
    }, LONG_PRESS_MS);
  }

  /** A menu key of the keyboard, which no pointer pressed, leaves what is chosen. */
  private menuAsked(event: MouseEvent): void {
    clearTimeout(this.resting);
    if (event.button < 0) return;
    const box = this.element.getBoundingClientRect();
    const pixel = { x: event.clientX - box.left, y: event.clientY - box.top };
    this.actions.menu({ pixel, kind: this.lastPress?.kind ?? 'mouse', adding: false, free: false });
  }

  private moved(event: PointerEvent): void {
    const press = this.pressOf(event);
    this.lastPress = press;
    const held = this.pressed.get(event.pointerId);
    if (!held) {
      if (this.pressed.size === 0) this.actions.hover(press);
      return;
    }
    if (this.pressed.size === 2) {
      this.pinch(event.pointerId, press.pixel);
      return;
    }
    if (!this.travelling) {
      const travel = Math.hypot(press.pixel.x - held.start.pixel.x, press.pixel.y - held.start.pixel.y);
      if (travel < TRAVEL_PX[press.kind]) return;
      this.travelling = true;
      clearTimeout(this.resting);
      this.actions.hover(undefined);
      if (held.button === 0) this.gesture = this.actions.grab(held.start);
    }
    if (this.gesture) this.gesture.move(press);
    else this.actions.pan(press.pixel.x - held.last.x, press.pixel.y - held.last.y);
    held.last = press.pixel;
  }

  private up(event: PointerEvent): void {
    const held = this.pressed.get(event.pointerId);
    this.pressed.delete(event.pointerId);
    clearTimeout(this.resting);
    if (!held) return;
    const press = this.pressOf(event);
    if (this.gesture) {
      const { gesture } = this;
      this.gesture = undefined;
      gesture.finish(press);
    } else if (!this.travelling && held.button === 0) this.tapped(press, event.timeStamp);
  }

  private lost(event: PointerEvent): void {
    clearTimeout(this.resting);
    this.pressed.delete(event.pointerId);
    this.abandon();
  }

  private tapped(press: Press, atMs: number): void {
    const { lastTap } = this;
    const near = Math.hypot(press.pixel.x - lastTap.pixel.x, press.pixel.y - lastTap.pixel.y) < DOUBLE_PX;
    const times = near && atMs - lastTap.atMs < DOUBLE_MS ? lastTap.times + 1 : 1;
    this.lastTap = { atMs, pixel: press.pixel, times };
    this.actions.tap(press, times);
  }

  /** Two fingers: the sheet follows their middle and their distance. */
  private pinch(moved: number, pixel: Point): void {
    const other = [...this.pressed].find(([id]) => id !== moved)?.[1];
    const held = this.pressed.get(moved);
    if (!other || !held) return;
    const before = Math.hypot(held.last.x - other.last.x, held.last.y - other.last.y);
    const after = Math.hypot(pixel.x - other.last.x, pixel.y - other.last.y);
    const middle = { x: (pixel.x + other.last.x) / 2, y: (pixel.y + other.last.y) / 2 };
    this.actions.pan((pixel.x - held.last.x) / 2, (pixel.y - held.last.y) / 2);
    if (before > 1 && after > 1) this.actions.zoom(middle, after / before);
    held.last = pixel;
  }

  private wheeled(event: WheelEvent): void {
    event.preventDefault();
    const box = this.element.getBoundingClientRect();
    const at = { x: event.clientX - box.left, y: event.clientY - box.top };
    // Lines and pages as pixels; a pinch on a trackpad comes as a wheel with Ctrl.
    const unit = event.deltaMode === 1 ? 16 : event.deltaMode === 2 ? 400 : 1;
    const [dx, dy] = [event.deltaX * unit, event.deltaY * unit];
    const isPinch = event.ctrlKey || event.metaKey;
    if (!isPinch && event.shiftKey) this.actions.pan(-(dx === 0 ? dy : dx), 0);
    else if (!isPinch && this.scroll.isPan(dx, dy, event.timeStamp)) this.actions.pan(-dx, -dy);
    else this.actions.zoom(at, Math.exp(-dy * (isPinch && Math.abs(dy) < NOTCH_PX ? 0.01 : 0.0016)));
  }
}
