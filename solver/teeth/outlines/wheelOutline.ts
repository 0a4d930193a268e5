/** The true outline of a wheel: teeth, crossing out, bore, as closed loops of arcs and lines. */
import { type OutlineShape, pointAtAngle } from '../../geometry/index.ts';
import type { WheelId } from '../../movement/ids.ts';
import type { Movement, Wheel } from '../../movement/schema.ts';
import { formOfWheel } from '../forms/formOfWheel.ts';
import type { NoTeeth, ToothForm } from '../forms/toothForm.ts';
import { sizeOfWheel } from '../sizes/sizeOfWheel.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { crossingOut, type NoOpenings } from './crossingOut.ts';
import { offsetOutline } from './offsetOutline.ts';
import { toothPath } from './toothPath.ts';
import { leastRim, statedArms } from './usualArms.ts';

/** How the outline of a wheel is drawn. */
export interface OutlineOptions {
  /** Largest miss of the fitted arcs, mm. */
  readonly tolerance?: number;
  /** Angle of a tooth's centre line, radians; the wheel's own phase when absent. */
  readonly phase?: number;
  /** Moves every loop out of the metal by this much, mm: half the kerf, or the cutter's radius. */
  readonly offset?: number;
  /** Radius of the cutter that will saw or mill the openings, mm: inner corners are not made smaller. */
  readonly cutterRadius?: number;
  /** How much larger than the bore the witness circle is, in radius, mm. */
  readonly witness?: number;
}

/** A closed loop and what it is. */
export interface WheelLoop {
  readonly role: 'teeth' | 'body' | 'opening' | 'bore' | 'pin';
  readonly shape: OutlineShape;
}

/** What a maker should know of an outline: of its teeth, its arms, or what a tool leaves. Lengths in mm. */
export type OutlineDoubt =
  | ToothDoubt
  | ({ readonly wheel: WheelId } & (
      | { readonly kind: 'cornersOfCutter'; readonly stated: number; readonly drawn: number }
      | { readonly kind: 'thinRim'; readonly rim: number; readonly least: number }
      | { readonly kind: 'noOpenings'; readonly why: NoOpenings }
      | { readonly kind: 'closedUp'; readonly offset: number; readonly role: WheelLoop['role'] }
      /** `left`: what stays standing in each space, mm². */
      | { readonly kind: 'rootsNotReached'; readonly offset: number; readonly left: number }
    ));

/** A wheel as loops to cut and circles to scribe. */
export interface WheelOutline {
  readonly kind: 'outline';
  /** Loops to cut, wheel's centre at the origin. The first is the outer edge of the metal. */
  readonly loops: readonly WheelLoop[];
  /** Circles to scribe only: they show whether a drill has wandered. */
  readonly witness: readonly OutlineShape[];
  /** Where each opening may be pierced to enter the saw. */
  readonly pierce: readonly (readonly [number, number])[];
  /** Largest miss of the arcs from the true curves, mm. */
  readonly miss: number;
  readonly doubts: readonly OutlineDoubt[];
}

/** Default tolerance of outlines, mm: a fifth of what a good workshop holds (issue of this project). */
const TOLERANCE = 0.002;
/** Witness circles stand this far outside the hole, mm: common practice. */
const WITNESS = 0.5;

/** The outline of a wheel, or why it has no teeth to draw. */
export function wheelOutline(wheel: Wheel, movement: Movement, options: OutlineOptions = {}): WheelOutline | NoTeeth {
  const form = formOfWheel(wheel, movement);
  if (form.kind === 'none') return form;
  const tolerance = options.tolerance ?? TOLERANCE;
  const phase = options.phase ?? ((wheel.phase ?? 0) * Math.PI) / 180;
  const teeth = teethLoops(form, wheel, movement, tolerance, phase);
  const crossed = openingsOf(wheel, movement, options.cutterRadius ?? 0);
  const bore = (wheel.bore ?? 0) / 2;
  const bores: WheelLoop[] = bore > 0 && !wheel.internal ? [{ role: 'bore', shape: circle(0, 0, bore) }] : [];
  const plain = [...teeth.loops, ...crossed.loops, ...bores];
  const moved = options.offset ? movedLoops(plain, options.offset, tolerance, wheel) : { loops: plain, doubts: [] };
  return {
    kind: 'outline',
    loops: moved.loops,
    witness: bores.map(() => circle(0, 0, bore + (options.witness ?? WITNESS))),
    pierce: crossed.pierce,
    miss: teeth.miss,
    doubts: [...form.doubts, ...crossed.doubts, ...moved.doubts],
  };
}

const circle = (x: number, y: number, radius: number): OutlineShape => ({ kind: 'circle', centre: [x, y], radius });

function teethLoops(form: ToothForm, wheel: Wheel, movement: Movement, tolerance: number, phase: number) {
  if (form.open) {
    const step = (2 * Math.PI) / form.teeth;
    const pin = (form.tip - form.root) / 2;
    // The disc that carries the trundles stands as far outside them as they are thick across: common practice.
    const shroud: WheelLoop = { role: 'body', shape: circle(0, 0, form.tip + pin) };
    const pins = Array.from({ length: form.teeth }, (_, k): WheelLoop => {
      const { x, y } = pointAtAngle({ x: 0, y: 0 }, form.pitchRadius, phase + k * step);
      return { role: 'pin', shape: circle(x, y, pin) };
    });
    return { loops: [shroud, ...pins], miss: 0 };
  }
  const path = toothPath(form, tolerance, phase);
  const edge: WheelLoop = { role: 'teeth', shape: { kind: 'path', vertices: path.vertices } };
  if (!form.internal) return { loops: [edge], miss: path.miss };
  const { rootRadius, module } = sizeOfWheel(wheel, movement);
  const outer = wheel.outerDiameter === undefined ? rootRadius + 2 * module : wheel.outerDiameter / 2;
  const body: WheelLoop = { role: 'body', shape: circle(0, 0, outer) };
  return { loops: [body, edge], miss: path.miss };
}

function openingsOf(wheel: Wheel, movement: Movement, cutterRadius: number) {
  const none = { loops: [] as WheelLoop[], pierce: [] as (readonly [number, number])[] };
  const stated = statedArms(wheel, movement);
  if (!stated || wheel.internal) return { ...none, doubts: [] };
  const doubts: OutlineDoubt[] = [];
  const arms = { ...stated, fillet: Math.max(stated.fillet, cutterRadius) };
  if (arms.fillet > stated.fillet) {
    doubts.push({ kind: 'cornersOfCutter', wheel: wheel.id, stated: stated.fillet, drawn: arms.fillet });
  }
  const rim = wheel.arms?.rim ?? 0;
  const least = leastRim(wheel, movement);
  if (rim < least) {
    doubts.push({ kind: 'thinRim', wheel: wheel.id, rim, least });
  }
  const crossed = crossingOut(arms);
  if (crossed.kind === 'none') {
    return { ...none, doubts: [...doubts, { kind: 'noOpenings', wheel: wheel.id, why: crossed.why } as const] };
  }
  const loops = crossed.openings.map((vertices): WheelLoop => ({ role: 'opening', shape: { kind: 'path', vertices } }));
  return { loops, pierce: [...crossed.pierce], doubts };
}

/** Every loop moved out of the metal: the outer edge grows, the openings shrink. */
function movedLoops(loops: readonly WheelLoop[], offset: number, tolerance: number, wheel: Wheel) {
  const doubts: OutlineDoubt[] = [];
  const moved = loops.flatMap((loop, i) => {
    // The first loop bounds the metal from outside; the ring's teeth and all openings bound it from inside.
    const { outlines, left } = offsetOutline(loop.shape, i === 0 ? offset : -offset, tolerance);
    if (outlines.length === 0) doubts.push({ kind: 'closedUp', wheel: wheel.id, offset, role: loop.role });
    if (loop.role === 'teeth' && left > wheel.teeth * 4 * tolerance * offset) {
      doubts.push({ kind: 'rootsNotReached', wheel: wheel.id, offset, left: left / wheel.teeth });
    }
    return outlines.map((shape): WheelLoop => ({ role: loop.role, shape }));
  });
  return { loops: moved, doubts };
}
