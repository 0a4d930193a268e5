/** Wheels and pinions: teeth, size, form, and where the body stands on its arbor. */
import { z } from 'zod';
import { FORM_NAMES, FORMS } from './forms/forms.ts';
import { arborId, wheelId } from './ids.ts';
import {
  angleDeg,
  coordinate,
  extent,
  factor,
  length,
  MAX_TEETH,
  MIN_TEETH,
  name,
  note,
  plusMinus,
} from './quantities.ts';

/** Size of the teeth; exactly one of the three ways. */
export const toothSize = z.union([
  z.looseObject({ module: z.number().min(0.01).max(100) }),
  z.looseObject({ diametralPitch: z.number().min(0.25).max(2540) }),
  z.looseObject({ circularPitch: z.number().min(0.03).max(320) }),
]);

const arms = z.looseObject({
  count: z.int().min(2).max(24),
  /** Width of an arm at the hub and at the rim, mm. */
  width: length,
  widthAtRim: length.exactOptional(),
  /** Radial thickness of the rim inside the roots, mm. */
  rim: length,
  /** Radius of the inner corners, mm. */
  fillet: extent.default(0.5),
});

export const wheel = z.looseObject({
  id: wheelId,
  name: name.exactOptional(),
  note: note.exactOptional(),
  arbor: arborId,
  teeth: z.int().min(MIN_TEETH).max(MAX_TEETH),
  size: toothSize,
  form: z.enum(FORM_NAMES),
  /** Whether it is cut as a wheel or as a pinion; by its count and its mates when absent. */
  cutAs: z.enum(['wheel', 'pinion']).exactOptional(),
  /** Teeth inside a ring. */
  internal: z.boolean().default(false),
  /** Name of a row family of the shipped or own tooth tables; the form's usual one when absent. */
  table: name.exactOptional(),
  ...FORMS.involute.fields,
  /** Factors × module that override the table. */
  addendum: factor.exactOptional(),
  dedendum: factor.exactOptional(),
  /** Tooth thickness on the pitch circle, × module. */
  thicknessFactor: factor.exactOptional(),
  ...FORMS.cycloidal.fields,
  ...FORMS.triangular.fields,
  ...FORMS.lantern.fields,
  /** As cut: these override what is calculated. */
  tipDiameter: length.exactOptional(),
  toothThickness: length.exactOptional(),
  /** Outer diameter of the body of an internal wheel, mm; the roots and two modules all round when absent. */
  outerDiameter: length.exactOptional(),
  /** Total radial run-out found at the teeth, mm (twice the eccentricity). */
  runOut: extent.default(0),
  /** Wobble found at the rim, mm in all: how far it goes up and down in a turn. */
  wobble: extent.exactOptional(),
  /** Height of the lower face above the marked face of the base plate, mm. */
  level: coordinate,
  thickness: length,
  /** ± of the thickness in a stack, mm; the movement's own for every piece when absent. */
  thicknessPlusMinus: plusMinus.exactOptional(),
  bore: extent.exactOptional(),
  /**
   * What the drawing said where a measured figure stands in one of these fields now, mm; nothing for what it left open,
   * except that tips which the drawing left to the form are named so: an own figure of the drawing stands in the same field.
   */
  asDrawn: z
    .looseObject({
      tipDiameter: z.union([length, z.literal('ofForm')]).exactOptional(),
      thickness: length.exactOptional(),
      bore: extent.exactOptional(),
      runOut: extent.exactOptional(),
    })
    .exactOptional(),
  hub: z
    .looseObject({ diameter: length, from: coordinate, to: coordinate, plusMinus: plusMinus.exactOptional() })
    .exactOptional(),
  arms: arms.exactOptional(),
  /** Angle of a tooth's centre line on the drawing, degrees; from the train when absent. */
  phase: angleDeg.exactOptional(),
});
