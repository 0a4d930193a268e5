/**
 * True teeth: the profile of one tooth, drawn once for every tooth of every wheel by instancing.
 *
 * Profiles are rows of a table of points (mm from the wheel's centre); an instance is one tooth of one wheel.
 */
import type { DataTexture, IUniform } from 'three';
import { PROFILE_POINTS } from '../../state/derive/wheelShape.ts';
import { Batch, inkMaterial, toothStrip, type Uniforms } from './batches.ts';
import { floatTable } from './inkwell.ts';
import { TOOTH_FRAGMENT, TOOTH_VERTEX } from './shaders.ts';
import { LINE_TYPES, PENS } from './stroke.ts';

const TOOTH_RECORD = 8;
const TOOTH_WIDTH = 1.15;

/** One wheel's teeth: PROFILE_POINTS coordinates of one pitch, from root to root, the tooth's centre line at angle 0. */
export interface Teeth {
  readonly owner: number;
  readonly count: number;
  readonly module: number;
  /** [x0, y0, x1, y1, …] */
  readonly profile: Float32Array;
}

/** Draws the teeth of every wheel with one call. */
export class ToothBatch {
  readonly batch: Batch;
  private readonly uniforms: Uniforms & { uProfiles: IUniform<DataTexture> };

  constructor(shared: Uniforms) {
    const uProfiles = { value: floatTable(new Float32Array(PROFILE_POINTS * 4), PROFILE_POINTS, 1) };
    this.uniforms = { ...shared, uProfiles, uPoints: { value: PROFILE_POINTS } };
    const material = inkMaterial(TOOTH_VERTEX, TOOTH_FRAGMENT, this.uniforms);
    this.batch = new Batch(toothStrip(PROFILE_POINTS), material, ['r0', 'r1'], TOOTH_RECORD);
  }

  /** Takes over all wheels' teeth. Equal profiles (the same array) share a row. */
  set(wheels: readonly Teeth[]): void {
    const rows = new Map<Float32Array, number>();
    for (const wheel of wheels) if (!rows.has(wheel.profile)) rows.set(wheel.profile, rows.size);
    this.writeProfiles([...rows.keys()]);
    const total = wheels.reduce((n, wheel) => n + wheel.count, 0);
    const data = new Float32Array(Math.max(1, total) * TOOTH_RECORD);
    const penAndType = PENS.indexOf('ink') + 16 * LINE_TYPES.indexOf('continuous');
    let at = 0;
    for (const wheel of wheels) {
      const pitch = (2 * Math.PI) / wheel.count;
      const row = rows.get(wheel.profile) ?? 0;
      for (let k = 0; k < wheel.count; k++) {
        data[at] = wheel.owner;
        data[at + 1] = row;
        data[at + 2] = k * pitch;
        data[at + 3] = pitch;
        data[at + 4] = penAndType;
        data[at + 5] = TOOTH_WIDTH;
        data[at + 6] = wheel.module;
        at += TOOTH_RECORD;
      }
    }
    this.batch.set(data, at);
  }

  dispose(): void {
    this.uniforms.uProfiles.value.dispose();
    this.batch.dispose();
  }

  private writeProfiles(profiles: readonly Float32Array[]): void {
    const rows = Math.max(1, profiles.length);
    const data = new Float32Array(rows * PROFILE_POINTS * 4);
    profiles.forEach((profile, row) => {
      for (let i = 0; i < PROFILE_POINTS; i++) {
        const at = (row * PROFILE_POINTS + i) * 4;
        data[at] = profile[2 * i] ?? 0;
        data[at + 1] = profile[2 * i + 1] ?? 0;
      }
    });
    this.uniforms.uProfiles.value.dispose();
    this.uniforms.uProfiles.value = floatTable(data, PROFILE_POINTS, rows);
  }
}
