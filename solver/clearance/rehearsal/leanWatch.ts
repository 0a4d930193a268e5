/** How far each body leans in a rehearsal, from the pushes of its teeth over many steps. */
import type { ArborId } from '../../movement/ids.ts';
import { type LeanPush, leanOf } from './lean.ts';
import type { RehearsalBody, RehearsalMesh } from './rehearsalTrain.ts';

/** How far an arbor leaned at most. */
export interface ArborLean {
  readonly arbor: ArborId;
  /** Greatest angle to the upright, degrees. */
  readonly tiltDeg: number;
  /** Greatest distance from its place at the height of any of its teeth that mesh, mm. */
  readonly aside: number;
  /** Whether it has bearings with a height, without which nothing can be told. */
  readonly known: boolean;
}

/** Sums pushes over so many steps: one step's are rough, since contacts come and go. */
const SUMMED = 20;

/** Sums pushes and keeps the greatest lean of each body. */
export class LeanWatch {
  private readonly bodies: readonly RehearsalBody[];
  private readonly meshes: readonly RehearsalMesh[];
  /** For each body, by mesh: the push summed so far. */
  private sums: Map<number, { x: number; y: number }>[];
  private readonly most: { tilt: number; aside: number }[];
  private steps = 0;

  constructor(bodies: readonly RehearsalBody[], meshes: readonly RehearsalMesh[]) {
    this.bodies = bodies;
    this.meshes = meshes;
    this.sums = bodies.map(() => new Map());
    this.most = bodies.map(() => ({ tilt: 0, aside: 0 }));
  }

  /** @param pushes  hands over the pushes of the step */
  watch(pushes: (visit: (body: number, mesh: number, x: number, y: number) => void) => void): void {
    pushes((body, mesh, x, y) => {
      const sum = this.sums[body]?.get(mesh) ?? { x: 0, y: 0 };
      this.sums[body]?.set(mesh, { x: sum.x + x, y: sum.y + y });
    });
    this.steps++;
    if (this.steps % SUMMED === 0) this.settle();
  }

  /** The mesh that is pushed hardest of late, on either side. */
  hardest(): number | undefined {
    let best: { readonly mesh: number; readonly push: number } | undefined;
    for (const sums of this.sums) {
      for (const [mesh, { x, y }] of sums) {
        const push = Math.hypot(x, y);
        if (!best || push > best.push) best = { mesh, push };
      }
    }
    return best?.mesh;
  }

  private settle(): void {
    const leans = this.bodies.map(({ bearings, heights }, body) => {
      const pushes = [...(this.sums[body] ?? [])].map(
        ([mesh, { x, y }]): LeanPush => ({ z: this.meshes[mesh]?.z ?? 0, x, y }),
      );
      return leanOf(bearings, pushes, heights);
    });
    this.bodies.forEach((_, body) => {
      const own = this.most[body];
      if (!own) return;
      // A pipe leans on what is inside it, which leans itself; at worst both the same way.
      let [tilt, aside] = [0, 0];
      for (let at: number | undefined = body, step = 0; at !== undefined && step < this.bodies.length; step++) {
        tilt += leans[at]?.tilt ?? 0;
        aside += leans[at]?.aside ?? 0;
        at = this.insideOf(at);
      }
      own.tilt = Math.max(own.tilt, tilt);
      own.aside = Math.max(own.aside, aside);
    });
    this.sums = this.bodies.map(() => new Map());
  }

  private insideOf(body: number): number | undefined {
    const inside = this.bodies[body]?.inside;
    const index = inside === undefined ? -1 : this.bodies.findIndex(({ arbors }) => arbors.includes(inside));
    return index < 0 ? undefined : index;
  }

  leans(): readonly ArborLean[] {
    return this.bodies.map(({ arbors, bearings }, i) => ({
      arbor: arbors[0] as ArborId, // each body has its arbor
      tiltDeg: ((this.most[i]?.tilt ?? 0) * 180) / Math.PI,
      aside: this.most[i]?.aside ?? 0,
      known: bearings.length > 0,
    }));
  }
}
