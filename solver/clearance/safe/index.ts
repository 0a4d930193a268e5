/** Safe places: where a sliding post, or any part, clears everything. */

export { type SafeStretch, safeAlongWall } from './alongWall.ts';
export { canSlide, type NoSafePlace, type SafePlaces, safePlacesOf, slideToSafe } from './safePlaces.ts';
