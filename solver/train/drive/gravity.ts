/** Standard acceleration of free fall, m/s² (exact by convention, CGPM 1901). */
export const STANDARD_GRAVITY = 9.80665;
