/** Torque and speed at every arbor, from the drive outwards with stated losses. */
import type { ArborId } from '../../movement/ids.ts';
import { toNumber } from '../turning/rational.ts';
import { otherEnd } from '../turning/trains.ts';
import type { Turning } from '../turning/turning.ts';
import { checkNumbers, type Refusal } from './inputCheck.ts';

/** What goes in, and what is lost on the way. */
export interface LossOptions {
  /** Torque put in at the power arbor, N·mm. */
  readonly torque: number;
  /** The arbor that the weight or spring turns (the drum or barrel); the movement's drive where absent. */
  readonly power?: ArborId;
  /**
   * Shares lost in each depth and in each arbor's pivots, 0 to below 1. Settings, not a standard: measure them, or
   * take what your own movements have shown.
   */
  readonly lossPerDepth: number;
  readonly lossPerPivot: number;
}

/** What reaches one arbor. */
export interface ArborTorque {
  readonly arbor: ArborId;
  /** N·mm, without sign, as if the whole pull went there. */
  readonly torque: number;
  /** Turns a minute, without sign. */
  readonly turnsPerMinute: number;
  /** Depths passed on the way, and the share of the power that is left. */
  readonly depths: number;
  readonly share: number;
}

/** What reaches every arbor, or why it cannot be told. */
export type TorqueReport =
  | {
      readonly kind: 'torques';
      readonly arbors: readonly ArborTorque[];
      readonly lossPerDepth: number;
      readonly lossPerPivot: number;
    }
  | Refusal;

/** Torques along the shortest way from the power arbor. Branches each get the full pull: the real one is shared. */
export function torquesOf(turning: Turning, options: LossOptions): TorqueReport {
  const problems = [
    ...checkNumbers({
      torque: { value: options.torque, above: 0, upTo: 1e9 },
      lossPerDepth: { value: options.lossPerDepth, from: 0, upTo: 0.99 },
      lossPerPivot: { value: options.lossPerPivot, from: 0, upTo: 0.99 },
    }),
  ];
  const power = options.power ?? turning.drive?.arbor;
  const start = power === undefined ? undefined : turning.arbors.get(power)?.rate;
  if (!turning.drive || power === undefined || !start || start.turns.n === 0n) {
    problems.push({ field: 'power', expected: { kind: 'arborThatTurns' } });
  }
  if (problems.length > 0 || !start || !turning.drive || power === undefined) return { kind: 'refused', problems };
  const perMinute = 60 / toNumber(turning.drive.periodSeconds);
  const startTurns = Math.abs(toNumber(start.turns));
  const pivot = 1 - options.lossPerPivot;
  const depth = 1 - options.lossPerDepth;
  const arbors: ArborTorque[] = [];
  const seen = new Map<ArborId, { readonly share: number; readonly depths: number }>([
    [power, { share: pivot, depths: 0 }],
  ]);
  const queue = [power];
  const links = new Map<ArborId, Turning['links'][number][]>();
  for (const link of turning.links) {
    for (const end of [link.from, link.to]) links.set(end, [...(links.get(end) ?? []), link]);
  }
  for (let index = 0; index < queue.length; index++) {
    const at = queue[index] as ArborId; // below its length
    const here = seen.get(at) ?? { share: 1, depths: 0 };
    const turns = turning.arbors.get(at)?.rate?.turns;
    if (turns === undefined || turns.n === 0n) continue;
    const speed = Math.abs(toNumber(turns));
    arbors.push({
      arbor: at,
      torque: (options.torque * startTurns * here.share) / speed,
      turnsPerMinute: speed * perMinute,
      depths: here.depths,
      share: here.share,
    });
    for (const link of links.get(at) ?? []) {
      const far = otherEnd(link, at);
      if (seen.has(far)) continue;
      const fixed = link.kind === 'fixed';
      seen.set(far, { share: here.share * (fixed ? 1 : depth * pivot), depths: here.depths + (fixed ? 0 : 1) });
      queue.push(far);
    }
  }
  return { kind: 'torques', arbors, lossPerDepth: options.lossPerDepth, lossPerPivot: options.lossPerPivot };
}
