/** How the bench looks at a finding. */
import type { Point } from '../../../solver/geometry/index.ts';
import { toScreen, type View } from '../view.ts';

/** Length on screen that the gap of a shown finding is brought to, CSS pixels, and the closest that it is looked at for that, px per mm. */
const FINDING_PX = 60;
const FINDING_SCALE = 12;
/** What lies nearer to the edge of the window than this is brought into its middle, CSS pixels. */
const EDGE = 40;

/** The view that shows a gap: close enough to see what is meant, never further away than the maker looks already. */
export function viewOfGap(view: View, [a, b]: readonly [Point, Point]): View {
  const centre = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  const pixel = toScreen(view, centre);
  const inside = pixel.x > EDGE && pixel.y > EDGE && pixel.x < view.width - EDGE && pixel.y < view.height - EDGE;
  const scale = Math.max(view.scale, Math.min(FINDING_PX / Math.hypot(b.x - a.x, b.y - a.y), FINDING_SCALE));
  return inside && scale <= view.scale ? view : { ...view, centre, scale };
}
