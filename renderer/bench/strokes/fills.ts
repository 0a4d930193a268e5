/** Hatched cut sections with any outline: triangles in millimetres, hatched by the shader at a fixed pitch on screen. */
import { BufferAttribute, BufferGeometry, Mesh, type RawShaderMaterial, ShapeUtils, Vector2 } from 'three';
import { inkMaterial, type Uniforms } from './batches.ts';
import { FILL_FRAGMENT, FILL_VERTEX } from './shaders.ts';
import { LINE_TYPES, PENS, type StrokeManner } from './stroke.ts';

/** A region to hatch: rings of points (mm), the outer one first. */
export interface HatchedRegion extends Pick<StrokeManner, 'pen' | 'from'> {
  readonly owner: number;
  readonly outer: readonly (readonly [number, number])[];
  readonly holes: readonly (readonly (readonly [number, number])[])[];
}

/** All hatched sections as one mesh. */
export class FillMesh {
  readonly mesh: Mesh<BufferGeometry, RawShaderMaterial>;

  constructor(uniforms: Uniforms) {
    this.mesh = new Mesh(new BufferGeometry(), inkMaterial(FILL_VERTEX, FILL_FRAGMENT, uniforms));
    this.mesh.frustumCulled = false;
    this.mesh.visible = false;
  }

  set(regions: readonly HatchedRegion[]): void {
    const corners: number[] = [];
    const records: number[] = [];
    const index: number[] = [];
    for (const region of regions) {
      const first = corners.length / 2;
      const outer = region.outer.map(([x, y]) => new Vector2(x, y));
      const holes = region.holes.map((hole) => hole.map(([x, y]) => new Vector2(x, y)));
      const penAndType = PENS.indexOf(region.pen) + 16 * LINE_TYPES.indexOf('hatched');
      for (const { x, y } of [outer, ...holes].flat()) {
        corners.push(x, y);
        records.push(region.owner, penAndType, region.from ?? 0);
      }
      for (const triangle of ShapeUtils.triangulateShape(outer, holes)) {
        for (const corner of triangle) index.push(first + corner);
      }
    }
    this.mesh.geometry.dispose();
    const geometry = new BufferGeometry();
    geometry.setAttribute('corner', new BufferAttribute(new Float32Array(corners), 2));
    geometry.setAttribute('r0', new BufferAttribute(new Float32Array(records), 3));
    geometry.setIndex(new BufferAttribute(new Uint32Array(index), 1));
    this.mesh.geometry = geometry;
    this.mesh.visible = index.length > 0;
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}
