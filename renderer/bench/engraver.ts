/**
 * The engraver draws figures on the card. It knows strokes, owners and a view; nothing of movements.
 *
 * Figures are kept by key and packed when they are handed in; a moved owner costs four floats. `draw` is called
 * by the frame loop of the bench only when something changed. When the graphics context is lost, three uploads
 * everything again from the arrays kept here; the bench only has to ask for a frame.
 */
import { OrthographicCamera, Scene, WebGLRenderer } from 'three';
import type { Point } from '../../solver/geometry/index.ts';
import type { View } from '../state/view.ts';
import { arcBatch, type Batch, lineBatch } from './strokes/batches.ts';
import { FillMesh, type HatchedRegion } from './strokes/fills.ts';
import { EMPHASIS, type Emphasis, Inkwell, type Pens } from './strokes/inkwell.ts';
import { joinRecords, type Packed, packStrokes } from './strokes/packing.ts';
import type { Stroke } from './strokes/stroke.ts';
import { type Teeth, ToothBatch } from './strokes/teeth.ts';

/** All that is drawn of one part. */
export interface EngravedFigure {
  /** The part whose place moves it. */
  readonly owner: string;
  /** For what stands still: the place (mm) that its coordinates are told from; the owner is then its own. */
  readonly anchor?: Point;
  readonly strokes: readonly Stroke[];
  readonly teeth?: { readonly count: number; readonly module: number; readonly profile: Float32Array };
  readonly regions?: readonly Omit<HatchedRegion, 'owner'>[];
}

/** Pitch on screen below which the shader leaves out teeth that are not chosen (`teethShown`), CSS pixels. */
const TEETH_FROM_PX = 8.4;

/** Layers from the lowest: figures keep their order of entry inside one. Notes change from frame to frame, the rest rarely. */
export type EngravedLayer = 'parts' | 'signs' | 'notes';

/** A figure that is on the card. */
interface Held {
  readonly figure: EngravedFigure;
  readonly packed: Packed;
}

/** The batches of one layer, and whether they must be filled again. */
interface LayerBatches {
  readonly arcs: Batch;
  readonly lines: Batch;
  readonly figures: Map<string, Held>;
  stale: boolean;
  arcData: Float32Array;
  lineData: Float32Array;
}

/** Owns the card's scene and draws it. */
export class Engraver {
  readonly renderer: WebGLRenderer;
  private readonly inkwell = new Inkwell();
  private readonly scene = new Scene();
  private readonly camera = new OrthographicCamera(-1, 1, 1, -1, -1, 1);
  private readonly teeth: ToothBatch;
  private readonly fills: FillMesh;
  private readonly layers: Readonly<Record<EngravedLayer, LayerBatches>>;
  private readonly owners = new Map<string, number>();
  private readonly freeRows: number[] = [];
  /** Owners that are chosen: their teeth are drawn when the others' are too small. */
  private readonly chosen = new Set<string>();
  private usualModule = 1;
  /** Which teeth the batch holds now. */
  private teethHeld: 'all' | 'chosen' = 'chosen';
  private teethStale = false;
  private origin: Point = { x: 0, y: 0 };

  constructor(canvas: HTMLCanvasElement) {
    this.renderer = new WebGLRenderer({ canvas, alpha: true, antialias: false, depth: false, stencil: false });
    this.renderer.sortObjects = false;
    this.renderer.setClearColor(0x000000, 0);
    const { uniforms } = this.inkwell;
    this.fills = new FillMesh(uniforms);
    this.layers = { parts: this.emptyLayer(), signs: this.emptyLayer(), notes: this.emptyLayer() };
    this.teeth = new ToothBatch(uniforms);
    const { parts, signs, notes } = this.layers;
    for (const mesh of [
      this.fills.mesh,
      parts.arcs.mesh,
      parts.lines.mesh,
      this.teeth.batch.mesh,
      signs.arcs.mesh,
      signs.lines.mesh,
      notes.arcs.mesh,
      notes.lines.mesh,
    ]) {
      this.scene.add(mesh);
    }
  }

  setPens(pens: Pens): void {
    this.inkwell.setPens(pens);
  }

  /** Density 0..1 of numbers to context; `recede` is what plain parts keep of their strength. */
  setDensity(density: number, recede: number): void {
    this.inkwell.uniforms.uDensity.value = density;
    this.inkwell.uniforms.uRecede.value = recede;
  }

  /** The module that decides when teeth are drawn, mm. */
  setUsualModule(module: number): void {
    this.usualModule = module;
    this.inkwell.uniforms.uUsualModule.value = module;
  }

  /** Places are told relative to this point, so that single precision keeps a thousandth of a pixel. */
  setOrigin(origin: Point): void {
    this.origin = origin;
    for (const { figures } of Object.values(this.layers)) {
      for (const { figure } of figures.values()) {
        if (figure.anchor) this.setPlace(figure.owner, figure.anchor.x, figure.anchor.y, 0, 'related');
      }
    }
  }

  /** Replaces a figure; the same figure again costs nothing. */
  setFigure(layer: EngravedLayer, key: string, figure: EngravedFigure): void {
    const into = this.layers[layer];
    if (into.figures.get(key)?.figure === figure) return;
    into.figures.set(key, { figure, packed: packStrokes(figure.strokes, this.rowOf(figure.owner)) });
    into.stale = true;
    if (figure.anchor) this.setPlace(figure.owner, figure.anchor.x, figure.anchor.y, 0, 'related');
  }

  removeFigure(layer: EngravedLayer, key: string): void {
    if (this.layers[layer].figures.delete(key)) this.layers[layer].stale = true;
  }

  keys(layer: EngravedLayer): IterableIterator<string> {
    return this.layers[layer].figures.keys();
  }

  /** Moves an owner; x and y in mm, rotation in radians. */
  setPlace(owner: string, x: number, y: number, rotation: number, emphasis: Emphasis): void {
    if (this.chosen.has(owner) !== (emphasis === 'chosen')) {
      if (emphasis === 'chosen') this.chosen.add(owner);
      else this.chosen.delete(owner);
      this.teethStale = true;
    }
    this.inkwell.setRow(this.rowOf(owner), x - this.origin.x, y - this.origin.y, rotation, EMPHASIS[emphasis]);
  }

  /** Forgets an owner, whose figures must be gone. */
  dropOwner(owner: string): void {
    const row = this.owners.get(owner);
    if (row === undefined) return;
    this.owners.delete(owner);
    this.chosen.delete(owner);
    this.freeRows.push(row);
  }

  /** Draws one frame. */
  draw(view: View, ratio: number): void {
    this.refresh('parts');
    this.refresh('signs');
    this.refresh('notes');
    this.refreshTeeth(view.scale);
    this.inkwell.setView(view, this.origin, ratio);
    const { width, height } = this.renderer.domElement;
    const wanted = [Math.floor(view.width * ratio), Math.floor(view.height * ratio)];
    // Setting either makes a new drawing buffer, even where it is the same.
    if (this.renderer.getPixelRatio() !== ratio) this.renderer.setPixelRatio(ratio);
    if (width !== wanted[0] || height !== wanted[1]) this.renderer.setSize(view.width, view.height, false);
    this.renderer.render(this.scene, this.camera);
  }

  dispose(): void {
    for (const layer of Object.values(this.layers)) {
      layer.arcs.dispose();
      layer.lines.dispose();
    }
    this.teeth.dispose();
    this.fills.dispose();
    this.inkwell.dispose();
    this.renderer.dispose();
  }

  private emptyLayer(): LayerBatches {
    const { uniforms } = this.inkwell;
    return {
      arcs: arcBatch(uniforms),
      lines: lineBatch(uniforms),
      figures: new Map(),
      stale: false,
      arcData: new Float32Array(0),
      lineData: new Float32Array(0),
    };
  }

  private rowOf(owner: string): number {
    const known = this.owners.get(owner);
    if (known !== undefined) return known;
    const row = this.freeRows.pop() ?? this.owners.size;
    this.inkwell.reserve(row + 1);
    this.owners.set(owner, row);
    return row;
  }

  /** Joins the records of a layer anew when one of its figures changed. */
  private refresh(name: EngravedLayer): void {
    const layer = this.layers[name];
    if (!layer.stale) return;
    layer.stale = false;
    const held = [...layer.figures.values()];
    const arcs = joinRecords(
      held.map(({ packed }) => packed.arcs),
      layer.arcData,
    );
    const lines = joinRecords(
      held.map(({ packed }) => packed.lines),
      layer.lineData,
    );
    layer.arcData = arcs.data;
    layer.lineData = lines.data;
    layer.arcs.set(arcs.data, arcs.used);
    layer.lines.set(lines.data, lines.used);
    if (name !== 'parts') return;
    this.teethStale = true;
    this.fills.set(
      held.flatMap(({ figure }) =>
        (figure.regions ?? []).map((region) => ({ owner: this.rowOf(figure.owner), ...region })),
      ),
    );
  }

  /** All teeth, or only those of what is chosen while the others would be too small to be drawn. */
  private refreshTeeth(scale: number): void {
    const held = Math.PI * this.usualModule * scale < TEETH_FROM_PX ? 'chosen' : 'all';
    if (held === this.teethHeld && !this.teethStale) return;
    this.teethHeld = held;
    this.teethStale = false;
    const teeth: Teeth[] = [];
    for (const { figure } of this.layers.parts.figures.values()) {
      if (!figure.teeth || (held === 'chosen' && !this.chosen.has(figure.owner))) continue;
      teeth.push({ owner: this.rowOf(figure.owner), ...figure.teeth });
    }
    this.teeth.set(teeth);
  }
}
