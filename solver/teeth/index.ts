/**
 * Teeth: sizes of wheels and pinions, the true form of a tooth, the contact of a pair, and what a depth does.
 *
 * Read `sizes/wheelSize.ts` (the circles of a wheel), `forms/toothForm.ts` (one tooth in polar coordinates),
 * `contact/contactOfPair.ts`, `contact/windowOfDepth.ts`, `reports/depthReport.ts`. Two more faces belong to the room:
 * `cutting/index.ts` (cutters and dividing) and `outlines/index.ts` (whole wheels as outlines, crossing out).
 *
 * @example
 * const { pitch } = sizeOfWheel(movement, wheel);
 * const { calculated } = calculatedDepth(movement, wheel, pinion);
 */
export type { NoContact, PairContact } from './contact/contact.ts';
export { type ContactOfPair, contactOfPair, type PairDoubt } from './contact/contactOfPair.ts';
export { type FaultsOfPair, faultsOfPair } from './contact/faultsOfPair.ts';
export { type DepthWindow, windowOfDepth } from './contact/windowOfDepth.ts';
export { formOfWheel } from './forms/formOfWheel.ts';
export { hasTwoCuts } from './forms/kinds/formKinds.ts';
export { halfAngleAt, type ToothForm } from './forms/toothForm.ts';
export { type ToothTrouble, troublesOfTeeth } from './forms/troublesOfTeeth.ts';
export type { ContactFault, FullForms, Mismatch, PairFault } from './pairFaults.ts';
export type { DepthMove, DepthRemark, DepthVerdict, ShakeFigure } from './reports/depthRemarks.ts';
export { type DepthEntry, depthReport } from './reports/depthReport.ts';
export { calculatedDepth } from './sizes/calculatedDepth.ts';
export { moduleOf } from './sizes/moduleOf.ts';
export { isPinion, meshesOnlyWith } from './sizes/partners.ts';
export { sizeOfWheel } from './sizes/sizeOfWheel.ts';
export type { WheelSize } from './sizes/wheelSize.ts';
export type { ToothDoubt, ToothFault } from './toothFaults.ts';
