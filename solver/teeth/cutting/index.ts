/** Cutting: which cutter, how deep, and how to divide the circle. Start with `dividing.ts`, then `cuttingReport.ts`. */
export { type CuttingData, cuttingDataOf, cuttingReport, textOfCheckOff, textOfCutting } from './cuttingReport.ts';
export { exactWays } from './divideExactly.ts';
export { type DividingKit, USUAL_KIT } from './dividing.ts';
export { settingGives } from './settingGives.ts';
