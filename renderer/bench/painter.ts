/**
 * Paints the bench: takes over the state when it changes, draws at the next frame, and draws again when the
 * graphics context comes back or a font comes in.
 */

import type { Point } from '../../solver/geometry/index.ts';
import type { Bench } from '../state/bench.ts';
import { pointOf } from '../state/derive/parts.ts';
import { toScreen } from '../state/view.ts';
import { type Balloon, type BalloonRing, placeBalloons } from './balloons.ts';
import { locusLabels, NameLabels, signBoxes } from './benchLettering.ts';
import { edgeBoxes } from './edgeBoxes.ts';
import { gapFigures, gapLabels } from './figures/gapFigures.ts';
import { guideFigures, guideLabels } from './figures/guideFigures.ts';
import { lociOf, type ScribedLocus, scribedFigure } from './figures/scribedArcs.ts';
import { FrameLoop } from './frameLoop.ts';
import type { LabelBox } from './labelPlacement.ts';
import { type Lead, type Lettered, Lettering, type LetteringColours } from './lettering.ts';
import { pensOfPage } from './pens.ts';
import { BenchScene } from './scene.ts';

/** The elements that the bench is painted on. */
export interface PainterPage {
  readonly line: HTMLCanvasElement;
  readonly letters: HTMLCanvasElement;
  /** The element that wears the look. */
  readonly page: HTMLElement;
}

const NOTHING: ReadonlySet<string> = new Set();
/** Room that the title block takes in the lower right corner, CSS pixels. */
const TITLE_BLOCK = { width: 262, height: 74 };

/** Paints the bench whenever its state has changed. */
export class BenchPainter {
  private readonly scene: BenchScene;
  private readonly lettering: Lettering;
  private readonly names = new NameLabels();
  private readonly frames: FrameLoop;
  private readonly page: HTMLElement;
  private readonly giveBalloons: (balloons: readonly Balloon[]) => void;
  private colours: LetteringColours | undefined;
  private bench: Bench | undefined;
  private loci: { readonly place: Point; readonly loci: readonly ScribedLocus[] } | undefined;
  private chosen = NOTHING;
  private readonly stopListening: () => void;

  constructor({ line, letters, page }: PainterPage, giveBalloons: (balloons: readonly Balloon[]) => void) {
    this.scene = new BenchScene(line);
    this.lettering = new Lettering(letters);
    this.page = page;
    this.giveBalloons = giveBalloons;
    this.frames = new FrameLoop(() => this.draw());
    const control = new AbortController();
    line.addEventListener('webglcontextrestored', () => this.frames.ask(), { signal: control.signal });
    void document.fonts.ready.then(() => this.fontsCame());
    document.fonts.addEventListener('loadingdone', () => this.fontsCame(), { signal: control.signal });
    this.stopListening = () => control.abort();
  }

  /** Takes the pens of the look that the page wears. */
  takePens(): void {
    const pens = pensOfPage(this.page);
    this.colours = { ...pens, scribe: pens.scribe };
    this.scene.setPens(pens);
    this.frames.ask();
  }

  /** Takes over the state; reads all that the drawing depends on, so that an effect may call it. */
  show(bench: Bench): void {
    this.bench = bench;
    const { derived, looking } = bench;
    const { placed, findings } = derived;
    const { chosen, view } = looking;
    const { preview } = bench.hand;
    void view;
    void findings;
    void bench.looking.findingShown;
    this.chosen = bench.derived.emphasised;
    const notes = guideFigures(preview?.guides ?? []);
    const only = chosen.length === 1 ? pointOf(placed, chosen[0] ?? '') : undefined;
    const place = only && placed.places.get(only);
    this.loci = undefined;
    if (place) {
      const loci = lociOf(placed, place.id);
      this.loci = { place, loci };
      if (loci.length > 0) notes.set('loci', scribedFigure('note:loci', place, loci));
    }
    for (const [key, figure] of gapFigures(placed)) notes.set(key, figure);
    this.scene.update({
      placed,
      drawn: bench.derived.drawn,
      passing: preview !== undefined,
      sizes: bench.derived.sizes,
      shapes: bench.derived.shapes,
      phases: bench.derived.phases,
      chosen: this.chosen,
      related: NOTHING,
      hovered: bench.looking.hovered,
      density: bench.looking.density,
      notes,
    });
    this.frames.ask();
  }

  dispose(): void {
    this.frames.stop();
    this.stopListening();
    this.scene.dispose();
  }

  private fontsCame(): void {
    this.lettering.forgetWidths();
    this.frames.ask();
  }

  private draw(): void {
    const { bench, colours } = this;
    if (!bench || !colours) return;
    const { view } = bench.looking;
    const { placed } = bench.derived;
    const ratio = window.devicePixelRatio;
    this.scene.draw(view, ratio);
    const lettered: Lettered[] = [
      ...this.names.of({ placed, sizes: bench.derived.sizes, view, nameOf: bench.nameOf, chosen: this.chosen }),
      ...(this.loci ? locusLabels(this.loci.place, this.loci.loci, view, bench.lengthSays) : []),
      ...gapLabels(placed, view, bench.lengthSays),
      ...guideLabels(bench.hand.preview?.guides ?? [], view),
    ];
    const signs = signBoxes(placed, view);
    const title: LabelBox = [view.width - TITLE_BLOCK.width, view.height - TITLE_BLOCK.height, view.width, view.height];
    const balloons = bench.hand.preview ? [] : this.balloonsOf(bench, [...signs, title]);
    const leads: Lead[] = balloons.map(({ at, to }) => ({ from: at, to }));
    const blocked: LabelBox[] = [
      ...signs,
      ...edgeBoxes(placed, view),
      ...balloons.map(({ at }): LabelBox => [at.x - 13, at.y - 13, at.x + 13, at.y + 13]),
      title,
    ];
    this.lettering.draw(lettered, leads, blocked, { width: view.width, height: view.height, ratio }, colours);
    this.giveBalloons(balloons);
  }

  private balloonsOf({ derived, looking: { view } }: Bench, blocked: readonly LabelBox[]): Balloon[] {
    const { findings, placed, sizes } = derived;
    if (findings.length === 0) return [];
    const places = findings.flatMap((finding, index) => {
      const at = finding.at;
      if (!at) return [];
      const [a, b] = at;
      const to = toScreen(view, { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });
      return [{ key: finding.key, number: index + 1, to }];
    });
    const rings = placed.movement.wheels.flatMap((wheel): BalloonRing[] => {
      const place = placed.places.get(wheel.arbor);
      const size = sizes.get(wheel.id);
      return place && size ? [{ at: toScreen(view, place), radius: size.tipRadius * view.scale }] : [];
    });
    const window: LabelBox = [0, 0, view.width, view.height];
    return placeBalloons(places, { middle: { x: view.width / 2, y: view.height / 2 }, window, blocked, rings });
  }
}
