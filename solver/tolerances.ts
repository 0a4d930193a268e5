/**
 * The lengths that decide what is the same and what holds, each written once: for every room, the window and the
 * command line. Tolerances that belong to one algorithm alone (pivots, steps, convergence) stand beside it.
 *
 * Order: `HOLDS` < `ONE_PLACE`, and both far below `GAUGE`; a test holds it.
 */

/**
 * A rule holds, loci touch and a place has not moved within this, mm.
 *
 * Origin: derived. Coordinates up to 10 m in doubles are spaced 2e-12 mm; a chain of some hundred closed-form
 * crossings keeps 1e-9 with two digits to spare, and no workshop comes within a factor of 10 000 of it.
 * Smaller: sound plantings far from the origin are told as contested, by rounding alone. Larger: "planted" is said of
 * rules that do not hold, and near-tangent arcs are told to touch when they miss.
 */
export const HOLDS = 1e-9;

/**
 * Two places nearer than this are one place (one hole, one axis, one corner), and two solids that overlap by less
 * than this touch, mm. Also what is added to a cure, so that rounding does not eat the gap it makes.
 *
 * Origin: a thousandth of what any workshop can hold, and a thousand times what the planting proves (`HOLDS`), so
 * that planted places that are meant to coincide always do.
 * Smaller: pipes and their arbors come apart into two holes, and parts that are drawn in contact foul. Larger: two
 * marks that a maker can tell apart become one, and real overlaps pass as contact.
 */
export const ONE_PLACE = 1e-6;

/** As `ONE_PLACE`, where it speaks of solids in contact: how far parts that touch may overlap by rounding, mm. */
export const TOUCH = ONE_PLACE;

/**
 * Arcs that miss by no more than this are planted as touching, and that is told, mm.
 *
 * Origin: below every process of a workshop. Smaller: a length typed in three decimals contests a point. Larger:
 * "planted" is said of what a reamer can feel.
 */
export const TOUCHING = 1e-3;

/**
 * Finest length that a workshop can tell, mm: from this on a distance is past the end of a window of depth, a hole
 * read back from a file is another hole, a drill is under size, and holes of two plates are not drilled together.
 *
 * Origin: common practice, the last place of a micrometer; also the fineness of the contact engine's windows.
 * Smaller: depths set to the end of their window are told as past it. Larger: what a fine fit lives on is lost.
 */
export const GAUGE = 1e-3;

/**
 * Cures are offered in steps of this, mm: the finest that anyone turns or files to on purpose.
 *
 * Origin: common practice. Smaller: cures in digits that no one can set. Larger: more metal goes than has to.
 */
export const CURE_STEP = 0.01;
