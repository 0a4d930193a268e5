/**
 * An independent construction for the tests: it knows only how two wheels mesh, by walking over their teeth as points
 * on the pitch circles. It shares nothing with the solver's congruences.
 */
export interface DrawnWheel {
  readonly x: number;
  readonly y: number;
  readonly teeth: number;
  readonly internal?: boolean;
  /** Angle of the centre of one tooth, radians. */
  readonly angle: number;
}

/** Where the teeth of two wheels touch: on the line of centres (outside teeth: between them). */
function touchOf(a: DrawnWheel, b: DrawnWheel): { x: number; y: number; tx: number; ty: number } {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length];
  // Pitch radii in the proportion of the teeth; for a ring the point lies beyond the small wheel.
  const inside = a.internal || b.internal;
  const ra = inside ? (length * a.teeth) / Math.abs(b.teeth - a.teeth) : (length * a.teeth) / (a.teeth + b.teeth);
  const way = b.internal ? -1 : 1;
  return { x: a.x + way * ra * ux, y: a.y + way * ra * uy, tx: -uy, ty: ux };
}

/** Place of the wheel's tooth centre nearest the touching point, along the tangent there, in pitches (-1/2 to 1/2). */
function toothAlong(wheel: DrawnWheel, touch: ReturnType<typeof touchOf>): number {
  const radius = Math.hypot(touch.x - wheel.x, touch.y - wheel.y);
  const pitch = (2 * Math.PI * radius) / wheel.teeth;
  const at = Math.atan2(touch.y - wheel.y, touch.x - wheel.x);
  let best = Number.POSITIVE_INFINITY;
  for (let tooth = 0; tooth < wheel.teeth; tooth++) {
    const ahead = wheel.angle + (2 * Math.PI * tooth) / wheel.teeth - at;
    const arc = radius * Math.atan2(Math.sin(ahead), Math.cos(ahead));
    if (Math.abs(arc) < Math.abs(best)) best = arc;
  }
  // Anticlockwise about the wheel moves the rim to the left of the outward direction.
  const [ox, oy] = [(touch.x - wheel.x) / radius, (touch.y - wheel.y) / radius];
  const left = -oy * touch.tx + ox * touch.ty;
  return (Math.sign(left) * best) / pitch;
}

/** By how much of a pitch the teeth of b miss the spaces of a, -1/2 to 1/2. */
export function missOf(a: DrawnWheel, b: DrawnWheel): number {
  const touch = touchOf(a, b);
  const apart = toothAlong(b, touch) - toothAlong(a, touch) - 0.5;
  return apart - Math.round(apart);
}

/** b turned (by less than a tooth) until it meshes with a. */
export function meshed(a: DrawnWheel, b: DrawnWheel): DrawnWheel {
  // A small trial turn tells which way the miss changes.
  const trial = 1e-4 / b.teeth;
  const slope = (missOf(a, { ...b, angle: b.angle + trial }) - missOf(a, b)) / trial;
  const rounded = (Math.abs(slope) > b.teeth ? Math.sign(slope) : Math.sign(slope) || 1) * (b.teeth / (2 * Math.PI));
  return { ...b, angle: b.angle - missOf(a, b) / rounded };
}
