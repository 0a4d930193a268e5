/** Safe places: where a sliding post, or any part, clears everything. */
export { canSlide, type NoSafePlace, type SafePlaces, safePlacesOf, slideToSafe } from './safePlaces.ts';
