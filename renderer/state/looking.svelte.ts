/** How the document is looked at: view, look, face, density, what is chosen, and what was told last. */
import type { ShellBridge } from '../../electron/bridge.ts';
import type { Point } from '../../solver/geometry/index.ts';
import type { PartId } from '../../solver/movement/ids.ts';
import type { HandleRef } from './handleRef.ts';
import type { Look } from './looks.ts';
import { fitTo, panBy, resized, type View, type ViewBounds, zoomAt } from './view.ts';

export const FACES = { bench: 'Bench', levels: 'Levels', steps: 'Steps', sheets: 'Sheets' } as const;
export type WindowFace = keyof typeof FACES;

/** Something told to the maker, until the next thing is told. */
export interface Told {
  readonly kind: 'done' | 'refused';
  readonly says: string;
}

/** The guided build: put away, offered at the first start, or on. */
export type GuideState = 'off' | 'offered' | 'on';

/** Air about what is fitted into the window, and more below straight-sided work, which would reach under the title block, CSS pixels. */
const MARGIN = 44;
const FOOT = 56;

/** Holds what is chosen and how it is looked at. */
export class Looking {
  private isAt = $state.raw<View>({ centre: { x: 0, y: 0 }, scale: 3, width: 800, height: 600 });
  private picked = $state.raw<readonly PartId[]>([]);
  private under = $state.raw<PartId | undefined>(undefined);
  private worn = $state<Look>('paper');
  private lines = $state(0.6);
  private faced = $state<WindowFace>('bench');
  private saidLast = $state.raw<Told | undefined>(undefined);
  private asked = $state<string | undefined>(undefined);
  private listed = $state(false);
  private guided = $state<GuideState>('off');
  private system = $state.raw<ShellBridge['platform']>('linux');
  private held = $state.raw<{ readonly part: PartId; readonly ref: HandleRef } | undefined>(undefined);

  get view(): View {
    return this.isAt;
  }

  get chosen(): readonly PartId[] {
    return this.picked;
  }

  get hovered(): PartId | undefined {
    return this.under;
  }

  get look(): Look {
    return this.worn;
  }

  /** From numbers only (0) to full context (1). */
  get density(): number {
    return this.lines;
  }

  get face(): WindowFace {
    return this.faced;
  }

  get told(): Told | undefined {
    return this.saidLast;
  }

  /** Key of the finding that was asked for last. */
  get findingShown(): string | undefined {
    return this.asked;
  }

  /** Is the list of keys shown? */
  get keysShown(): boolean {
    return this.listed;
  }

  get guide(): GuideState {
    return this.guided;
  }

  /** What the keys of this computer are called by. */
  get platform(): ShellBridge['platform'] {
    return this.system;
  }

  /** The corner, side or rim that is chosen, and the part that it belongs to; it may be gone since. */
  get handle(): { readonly part: PartId; readonly ref: HandleRef } | undefined {
    return this.held;
  }

  /** Another document: nothing of the last one is chosen or told. */
  forget(): void {
    this.picked = [];
    this.under = undefined;
    this.asked = undefined;
    this.saidLast = undefined;
    this.held = undefined;
    if (this.guided === 'offered') this.guided = 'off';
  }

  choose(parts: readonly PartId[], adding = false): void {
    if (!adding) {
      this.picked = parts;
      return;
    }
    const kept = this.picked.filter((part) => !parts.includes(part));
    this.picked = [...kept, ...parts.filter((part) => !this.picked.includes(part))];
  }

  hover(part: PartId | undefined): void {
    this.under = part;
  }

  /** Chooses a corner, side or rim of a part; nothing gives it up. */
  takeHandle(part: PartId | undefined, ref: HandleRef | undefined): void {
    this.held = part !== undefined && ref ? { part, ref } : undefined;
  }

  see(view: View): void {
    this.isAt = view;
  }

  /** Moves the sheet, CSS pixels. */
  pan(dx: number, dy: number): void {
    this.isAt = panBy(this.isAt, dx, dy);
  }

  /** @param at CSS pixels of what keeps its place; the middle of the window when absent */
  zoom(factor: number, at: Point = { x: this.isAt.width / 2, y: this.isAt.height / 2 }): void {
    this.isAt = zoomAt(this.isAt, at, factor);
  }

  resize(width: number, height: number): void {
    this.isAt = resized(this.isAt, width, height);
  }

  /** Fits bounds into the window. */
  fit(bounds: ViewBounds | undefined, hasCorners: boolean): void {
    this.isAt = fitTo(this.isAt, bounds, MARGIN, hasCorners ? FOOT : 0);
  }

  show(face: WindowFace): void {
    this.faced = face;
  }

  wear(look: Look): void {
    this.worn = look;
  }

  draw(density: number): void {
    this.lines = Math.min(1, Math.max(0, density));
  }

  tell(kind: Told['kind'], says: string): void {
    this.saidLast = { kind, says };
  }

  /** What was told last no longer holds. */
  untell(): void {
    this.saidLast = undefined;
  }

  askFinding(key: string): void {
    this.asked = key;
  }

  listKeys(shown: boolean): void {
    this.listed = shown;
  }

  guideTo(guide: GuideState): void {
    this.guided = guide;
  }

  runsOn(platform: ShellBridge['platform']): void {
    this.system = platform;
  }
}
