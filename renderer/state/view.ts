/**
 * Where the sheet stands on the screen: the only file that turns millimetres into pixels and back.
 *
 * The world is millimetres, x right and y up; the screen is CSS pixels, x right and y down, from the upper left
 * corner of the bench. A view is a value: every move gives a new one.
 */

import type { Point } from '../../solver/geometry/index.ts';

/** What part of the sheet the bench shows. */
export interface View {
  /** The place in the middle of the bench, mm. */
  readonly centre: Point;
  /** CSS pixels for one millimetre. */
  readonly scale: number;
  /** Size of the bench, CSS pixels. */
  readonly width: number;
  readonly height: number;
}

/** [minX, minY, maxX, maxY], mm. */
export type ViewBounds = readonly [number, number, number, number];

/** Furthest out and in, CSS pixels per mm: 10 m of work on a small window, a hundredth of a millimetre as 40 px. */
export const MIN_SCALE = 0.005;
export const MAX_SCALE = 4000;

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/** The pixel at which a place is seen. */
export function toScreen(view: View, place: Point): Point {
  return {
    x: view.width / 2 + (place.x - view.centre.x) * view.scale,
    y: view.height / 2 - (place.y - view.centre.y) * view.scale,
  };
}

/** The place under a pixel, mm. */
export function toWorld(view: View, pixel: Point): Point {
  return {
    x: view.centre.x + (pixel.x - view.width / 2) / view.scale,
    y: view.centre.y - (pixel.y - view.height / 2) / view.scale,
  };
}

/** Moves the sheet by pixels, as if dragged. */
export function panBy(view: View, dx: number, dy: number): View {
  return { ...view, centre: { x: view.centre.x - dx / view.scale, y: view.centre.y + dy / view.scale } };
}

/** Zooms by a factor; the place under `pixel` stays under it. */
export function zoomAt(view: View, pixel: Point, factor: number): View {
  const scale = within(view.scale * factor, MIN_SCALE, MAX_SCALE);
  const under = toWorld(view, pixel);
  return {
    ...view,
    scale,
    centre: {
      x: under.x - (pixel.x - view.width / 2) / scale,
      y: under.y + (pixel.y - view.height / 2) / scale,
    },
  };
}

/**
 * Shows the whole of `bounds` with a margin of `marginPx` on every side, and `footPx` more below, where the title
 * block stands; an empty bench shows 180 mm,
 * so that the plate first offered is seen whole.
 */
export function fitTo(view: View, bounds: ViewBounds | undefined, marginPx = 48, footPx = 0): View {
  const [minX, minY, maxX, maxY] = bounds ?? [-90, -90, 90, 90];
  const across = Math.max(maxX - minX, 1e-3);
  const up = Math.max(maxY - minY, 1e-3);
  const room = Math.max(view.width - 2 * marginPx, view.width / 4, 1);
  const roomUp = Math.max(view.height - 2 * marginPx - footPx, view.height / 4, 1);
  const scale = within(Math.min(room / across, roomUp / up), MIN_SCALE, MAX_SCALE);
  return { ...view, scale, centre: { x: (minX + maxX) / 2, y: (minY + maxY) / 2 - footPx / 2 / scale } };
}

/** The same sheet in a window of another size: the place in the middle stays in the middle. */
export function resized(view: View, width: number, height: number): View {
  return { ...view, width, height };
}

/** The part of the sheet that is seen, mm. */
export function seenBounds(view: View): ViewBounds {
  const halfAcross = view.width / 2 / view.scale;
  const halfUp = view.height / 2 / view.scale;
  return [view.centre.x - halfAcross, view.centre.y - halfUp, view.centre.x + halfAcross, view.centre.y + halfUp];
}
