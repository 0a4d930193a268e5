/** Dragging a wheel up or down in the section: which part of it is held, and the level and thickness that follow. */
import type { Wheel } from '../../solver/movement/schema.ts';

export type Grip = 'body' | 'upper' | 'lower';

/** Steps that a drag falls on, mm: a maker shims and faces in twentieths; the number field takes anything. */
const STEP = 0.05;
/** Nearer than this to a face, in pixels, the face is held and not the body. */
const FACE_REACH_PX = 5;
const THINNEST = 0.1;

/** Where a wheel lies on its arbor, mm. */
export interface LevelRange {
  readonly level: number;
  readonly thickness: number;
}

/** Which part of a wheel's body is under the pointer: `fromTopPx` of `heightPx`. Thin bodies are held as a whole in their middle third. */
export function gripAt(fromTopPx: number, heightPx: number): Grip {
  const reach = Math.min(FACE_REACH_PX, heightPx / 3);
  if (fromTopPx <= reach) return 'upper';
  return fromTopPx >= heightPx - reach ? 'lower' : 'body';
}

/** Level range after the held part has moved up by `rise` mm. */
export function draggedRange(wheel: LevelRange, grip: Grip, rise: number): LevelRange {
  const upper = wheel.level + wheel.thickness;
  if (grip === 'body') return { level: onStep(wheel.level + rise), thickness: wheel.thickness };
  if (grip === 'upper') {
    return { level: wheel.level, thickness: Math.max(THINNEST, onStep(upper + rise) - wheel.level) };
  }
  const level = Math.min(onStep(wheel.level + rise), upper - THINNEST);
  return { level, thickness: upper - level };
}

/** The fields that an edit sets; a hub moves with its wheel. */
export function rangeFields(wheel: Wheel, range: LevelRange): Readonly<Record<string, unknown>> {
  const rise = range.level - wheel.level;
  const hub = wheel.hub && { ...wheel.hub, from: clean(wheel.hub.from + rise), to: clean(wheel.hub.to + rise) };
  return { level: clean(range.level), thickness: clean(range.thickness), ...(hub ? { hub } : {}) };
}

function onStep(value: number): number {
  return Math.round(value / STEP) * STEP;
}

/** Without the tail that adding decimals leaves; a nanometre is below anything that is cut. */
function clean(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}
