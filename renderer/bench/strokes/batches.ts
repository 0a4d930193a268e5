/**
 * Meshes that draw many strokes with one call: one batch for arcs, one for lines, each with its records in one buffer.
 */
import {
  BufferAttribute,
  CustomBlending,
  DoubleSide,
  DynamicDrawUsage,
  GLSL3,
  InstancedBufferGeometry,
  InstancedInterleavedBuffer,
  InterleavedBufferAttribute,
  type IUniform,
  Mesh,
  OneFactor,
  OneMinusSrcAlphaFactor,
  RawShaderMaterial,
} from 'three';
import { RECORD } from './packing.ts';
import { ARC_FRAGMENT, ARC_PIECES, ARC_VERTEX, LINE_FRAGMENT, LINE_VERTEX } from './shaders.ts';

export type Uniforms = Record<string, IUniform>;

/** A material of ours: premultiplied ink over the sheet, no depth; strokes are drawn in the order they are listed. */
export function inkMaterial(vertexShader: string, fragmentShader: string, uniforms: Uniforms): RawShaderMaterial {
  return new RawShaderMaterial({
    glslVersion: GLSL3,
    vertexShader,
    fragmentShader,
    uniforms,
    transparent: true,
    depthTest: false,
    depthWrite: false,
    blending: CustomBlending,
    blendSrc: OneFactor,
    blendDst: OneMinusSrcAlphaFactor,
    side: DoubleSide,
  });
}

/** A strip of `pieces` quads: (along 0..1, side). */
function stripGeometry(pieces: number, sides: readonly [number, number], step: number): InstancedBufferGeometry {
  const corners = new Float32Array((pieces + 1) * 4);
  const index = new Uint16Array(pieces * 6);
  for (let i = 0; i <= pieces; i++) corners.set([i * step, sides[0], i * step, sides[1]], i * 4);
  for (let i = 0; i < pieces; i++) {
    index.set(
      [0, 1, 2, 2, 1, 3].map((k) => 2 * i + k),
      i * 6,
    );
  }
  const geometry = new InstancedBufferGeometry();
  geometry.setIndex(new BufferAttribute(index, 1));
  geometry.setAttribute('strip', new BufferAttribute(corners, 2));
  geometry.instanceCount = 0;
  return geometry;
}

/** Many strokes of one kind, drawn with one call. */
export class Batch {
  readonly mesh: Mesh;
  private buffer: InstancedInterleavedBuffer;
  private readonly geometry: InstancedBufferGeometry;
  private readonly attributes: readonly string[];
  private readonly record: number;

  constructor(
    geometry: InstancedBufferGeometry,
    material: RawShaderMaterial,
    attributes: readonly string[],
    record: number,
  ) {
    this.geometry = geometry;
    this.attributes = attributes;
    this.record = record;
    this.mesh = new Mesh(geometry, material);
    this.mesh.frustumCulled = false;
    this.buffer = this.attach(new Float32Array(record));
  }

  /** Takes over `used` floats of records; the buffer is made anew only when the array is another one. */
  set(data: Float32Array, used: number): void {
    if (this.buffer.array !== data) this.buffer = this.attach(data);
    this.buffer.clearUpdateRanges();
    this.buffer.addUpdateRange(0, used);
    this.buffer.needsUpdate = true;
    this.geometry.instanceCount = used / this.record;
    this.mesh.visible = used > 0;
  }

  get count(): number {
    return this.geometry.instanceCount;
  }

  dispose(): void {
    this.geometry.dispose();
    (this.mesh.material as RawShaderMaterial).dispose(); // made in the constructor's caller, one material each
  }

  private attach(data: Float32Array): InstancedInterleavedBuffer {
    // A new buffer object frees the old one's memory on the card through the geometry's dispose.
    this.geometry.dispose();
    const buffer = new InstancedInterleavedBuffer(data, this.record, 1);
    buffer.setUsage(DynamicDrawUsage);
    this.attributes.forEach((name, index) => {
      this.geometry.setAttribute(name, new InterleavedBufferAttribute(buffer, 4, index * 4));
    });
    return buffer;
  }
}

/** The batch that draws all arcs of a layer. */
export function arcBatch(uniforms: Uniforms): Batch {
  const geometry = stripGeometry(ARC_PIECES, [0, 1], 1 / ARC_PIECES);
  return new Batch(geometry, inkMaterial(ARC_VERTEX, ARC_FRAGMENT, uniforms), ['r0', 'r1', 'r2'], RECORD);
}

/** The batch that draws all straight strokes of a layer. */
export function lineBatch(uniforms: Uniforms): Batch {
  const geometry = stripGeometry(1, [-1, 1], 1);
  return new Batch(geometry, inkMaterial(LINE_VERTEX, LINE_FRAGMENT, uniforms), ['r0', 'r1', 'r2', 'r3'], RECORD);
}

/** A strip along the points of one tooth profile. */
export function toothStrip(points: number): InstancedBufferGeometry {
  return stripGeometry(points - 1, [-1, 1], 1);
}
