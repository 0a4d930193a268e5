/** What the hand does now: one view open over the bench at most, one gesture under way at most; and what it holds copied. */
import type { Parts } from '../../solver/movement/index.ts';
import { type Rational, rational } from '../../solver/train/turning/rational.ts';
import type { Preview } from './preview.ts';
import type { OpenView, UnderWay, ViewKind } from './underWay.ts';

/** Holds the one open view and the one gesture. */
export class Hand {
  private over = $state.raw<OpenView | undefined>(undefined);
  private underWay = $state.raw<UnderWay | undefined>(undefined);
  private driven = $state.raw<Rational>(rational(0));
  private parts = $state.raw<Parts | undefined>(undefined);
  /** Gives up what pointers hold; handed in by whoever listens to them. */
  private letGo: () => boolean = () => false;

  get open(): OpenView | undefined {
    return this.over;
  }

  get gesture(): UnderWay | undefined {
    return this.underWay;
  }

  /** What the gesture shows before it is kept. */
  get preview(): Preview | undefined {
    return this.underWay && this.underWay.kind !== 'frame' ? this.underWay.preview : undefined;
  }

  get settingDown(): Extract<UnderWay, { kind: 'settingDown' }> | undefined {
    return this.underWay?.kind === 'settingDown' ? this.underWay : undefined;
  }

  get rehearsing(): boolean {
    return this.over?.kind === 'rehearsal';
  }

  /** How far the rehearsal has turned the train, in exact turns of the drive; 0 outside it. */
  get turned(): Rational {
    return this.driven;
  }

  /** What was copied, for pasting. */
  get copied(): Parts | undefined {
    return this.parts;
  }

  isOpen(kind: ViewKind): boolean {
    return this.over?.kind === kind;
  }

  /** Opens a view; the one that was open is left. */
  openView(view: OpenView): void {
    if (view.kind !== 'rehearsal') this.driven = rational(0);
    this.over = view;
  }

  /** Goes back to the bench from the view that is open; false where none was. */
  leaveView(): boolean {
    if (!this.over) return false;
    this.over = undefined;
    this.driven = rational(0);
    return true;
  }

  /** Turns the train of the rehearsal; nothing turns outside it. */
  turn(turned: Rational): void {
    if (this.rehearsing) this.driven = turned;
  }

  /** Tells what is under way; nothing ends it. */
  begin(gesture: UnderWay | undefined): void {
    this.underWay = gesture;
  }

  /** What is shown before it is kept no longer holds: a drag is over, and what is being set down waits to be aimed again. */
  forgetPreview(): void {
    const { settingDown } = this;
    this.underWay = settingDown && { ...settingDown, preview: undefined };
  }

  /** Whoever listens to pointers says how what they hold is given up. */
  listen(letGo: () => boolean): void {
    this.letGo = letGo;
  }

  /** Gives up what pointers hold; false where they held nothing. What is being set down stays. */
  abandon(): boolean {
    return this.letGo();
  }

  copy(parts: Parts): void {
    this.parts = parts;
  }
}
