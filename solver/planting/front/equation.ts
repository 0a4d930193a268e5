/** Equations of construction steps, linear about the planted places. */

/** Gradient of an equation with respect to one point. */
export interface GradientTerm {
  readonly point: number;
  readonly gx: number;
  readonly gy: number;
}

/** Σ gradient · d(place) + Σ noise = d(value), all in mm. */
export interface StepEquation {
  /** Where the equation's own error is counted: 2 × network rule + its number in the rule. */
  readonly source: number;
  readonly gradients: ReadonlyMap<number, readonly [number, number]>;
  /** Errors of exact rules that the equation's points were derived by. */
  readonly noises: readonly { readonly source: number; readonly factor: number }[];
}
