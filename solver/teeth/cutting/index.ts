/** Cutting: which cutter, how deep, and how to divide the circle. Start with `dividing.ts`, then `cuttingReport.ts`. */
export type { CutterChoice } from './cutterChoice.ts';
export { type CuttingData, cuttingDataOf } from './cuttingReport.ts';
export { exactWays } from './divideExactly.ts';
export { type CrankMove, type DividingKit, type DividingWay, type NearWay, USUAL_KIT } from './dividing.ts';
export { type NoSetting, type SettingResult, settingGives } from './settingGives.ts';
