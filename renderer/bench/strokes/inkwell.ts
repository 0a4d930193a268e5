/**
 * What all line work shares: view, density, pens and the table of places, as one set of uniforms.
 */
import { DataTexture, FloatType, NearestFilter, RGBAFormat, type Texture, Vector2, Vector3 } from 'three';
import type { Point } from '../../../solver/geometry/index.ts';
import type { View } from '../../state/view.ts';
import { PLACES_ACROSS } from './shaders.ts';
import { PENS, type StrokePen } from './stroke.ts';

/** How a part stands out; the numbers are the shaders'. */
export const EMPHASIS = { hidden: -1, plain: 0, chosen: 1, related: 2, hovered: 3 } as const;
export type Emphasis = keyof typeof EMPHASIS;

/** Colours of the pens as `#rrggbb`. */
export type Pens = Readonly<Record<StrokePen, string>>;

/** Red, green and blue of `#rrggbb`, each 0..1. */
function channels(colour: string): [number, number, number] {
  const value = Number.parseInt(colour.slice(1), 16);
  return [((value >> 16) & 255) / 255, ((value >> 8) & 255) / 255, (value & 255) / 255];
}

/** A texture of floats, four to a texel. */
export function floatTable(data: Float32Array, across: number, rows: number): DataTexture {
  const table = new DataTexture(data, across, rows, RGBAFormat, FloatType);
  table.minFilter = NearestFilter;
  table.magFilter = NearestFilter;
  table.needsUpdate = true;
  return table;
}

/** Holds the values that every shader reads. */
export class Inkwell {
  readonly uniforms = {
    uCentre: { value: new Vector2() },
    uHalf: { value: new Vector2(1, 1) },
    uScale: { value: 1 },
    uRatio: { value: 1 },
    uDensity: { value: 1 },
    uUsualModule: { value: 1 },
    uRecede: { value: 1 },
    uHatchShift: { value: 0 },
    uPens: { value: PENS.map(() => new Vector3()) },
    uPlaces: { value: null as Texture | null },
  };
  /** Four floats for each owner: x, y (mm from the origin), rotation, emphasis.  */
  private rows = new Float32Array(PLACES_ACROSS * 4);
  private table = floatTable(this.rows, PLACES_ACROSS, 1);

  constructor() {
    this.uniforms.uPlaces.value = this.table;
  }

  setPens(pens: Pens): void {
    PENS.forEach((pen, index) => {
      this.uniforms.uPens.value[index]?.set(...channels(pens[pen]));
    });
  }

  /** Takes over a view; `origin` is the scene's origin in mm, `ratio` device pixels for a CSS pixel. */
  setView(view: View, origin: Point, ratio: number): void {
    const { uniforms } = this;
    const scale = view.scale * ratio;
    uniforms.uCentre.value.set(view.centre.x - origin.x, view.centre.y - origin.y);
    uniforms.uHalf.value.set((view.width * ratio) / 2, (view.height * ratio) / 2);
    uniforms.uScale.value = scale;
    uniforms.uRatio.value = ratio;
    // The hatching travels with the sheet; only the remainder is passed on, to keep its digits.
    const pitch = 6.5 * ratio;
    const along = ((view.centre.x + view.centre.y) * scale * Math.SQRT1_2) / pitch;
    uniforms.uHatchShift.value = (along - Math.floor(along)) * pitch;
  }

  /** Makes room for this many owners, keeping what is there. */
  reserve(owners: number): void {
    const needed = Math.ceil((owners + 1) / PLACES_ACROSS) * PLACES_ACROSS * 4;
    if (needed <= this.rows.length) return;
    const rows = new Float32Array(Math.max(needed, this.rows.length * 2));
    rows.set(this.rows);
    this.rows = rows;
    this.table.dispose();
    this.table = floatTable(rows, PLACES_ACROSS, rows.length / 4 / PLACES_ACROSS);
    this.uniforms.uPlaces.value = this.table;
  }

  setRow(owner: number, x: number, y: number, rotation: number, emphasis: number): void {
    const at = owner * 4;
    this.rows[at] = x;
    this.rows[at + 1] = y;
    this.rows[at + 2] = rotation;
    this.rows[at + 3] = emphasis;
    this.table.needsUpdate = true;
  }

  dispose(): void {
    this.table.dispose();
  }
}
