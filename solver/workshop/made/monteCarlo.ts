/** All errors at once, many times over: where the points and the depths may come to lie. Seeded, so repeatable. */
import type { PointId, RuleId } from '../../movement/ids.ts';
import { plantMovement } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { isNudgeable, nudged } from './nudge.ts';
import { seededNormal } from './seededNormal.ts';
import { depthDistances } from './sensitivity.ts';

export interface MonteCarloOptions {
  /** Default 500. */
  readonly trials?: number | undefined;
  /** Default 1. */
  readonly seed?: number | undefined;
  /** ± for lengths that state none, mm, two standard deviations (default 0: such lengths are exact). */
  readonly otherwise?: number | undefined;
}

export interface PointCloud {
  readonly id: PointId;
  /** Covariance, mm²: [xx, xy, yy], about the planned place. */
  readonly covariance: readonly [number, number, number];
  /** Farthest from the planned place in any trial, mm. */
  readonly farthest: number;
}

export interface DepthRange {
  readonly rule: RuleId;
  readonly planned: number;
  readonly least: number;
  readonly most: number;
  readonly sigma: number;
}

export interface MonteCarlo {
  readonly trials: number;
  /** Trials in which every settled point could be planted. */
  readonly planted: number;
  readonly points: readonly PointCloud[];
  readonly depths: readonly DepthRange[];
}

/** Trials with independent normal errors; a ± is two standard deviations. */
export function monteCarloOf(placed: PlacedMovement, options: MonteCarloOptions = {}): MonteCarlo {
  const { trials = 500, seed = 1, otherwise = 0 } = options;
  const normal = seededNormal(seed);
  const sigmas = placed.movement.rules.filter(isNudgeable).map((rule) => {
    const plusMinus = placed.rules.get(rule.id)?.plusMinus ?? rule.plusMinus ?? otherwise;
    return { id: rule.id, sigma: plusMinus / 2 };
  });
  const settled = [...placed.places.values()].filter((place) => place.state === 'planted');
  const clouds = new Map(settled.map((place) => [place.id, { xx: 0, xy: 0, yy: 0, farthest: 0 }]));
  const planned = depthDistances(placed);
  const ranges = new Map([...planned].map(([rule, at]) => [rule, { least: at, most: at, sum: 0 }]));
  let good = 0;
  for (let trial = 0; trial < trials; trial++) {
    const by = new Map(sigmas.map(({ id, sigma }) => [id, sigma * normal()]));
    const after = plantMovement(nudged(placed, by), placed);
    if (settled.some((place) => after.places.get(place.id)?.state !== 'planted')) continue;
    good++;
    for (const place of settled) {
      const [now, cloud] = [after.places.get(place.id), clouds.get(place.id)];
      if (!now || !cloud) continue;
      const [dx, dy] = [now.x - place.x, now.y - place.y];
      cloud.xx += dx * dx;
      cloud.xy += dx * dy;
      cloud.yy += dy * dy;
      cloud.farthest = Math.max(cloud.farthest, Math.hypot(dx, dy));
    }
    for (const [rule, distance] of depthDistances(after)) {
      const range = ranges.get(rule);
      if (!range) continue;
      range.least = Math.min(range.least, distance);
      range.most = Math.max(range.most, distance);
      range.sum += (distance - (planned.get(rule) ?? distance)) ** 2;
    }
  }
  const count = Math.max(1, good);
  return {
    trials,
    planted: good,
    points: [...clouds].map(([id, { xx, xy, yy, farthest }]) => ({
      id,
      covariance: [xx / count, xy / count, yy / count],
      farthest,
    })),
    depths: [...ranges].map(([rule, { least, most, sum }]) => ({
      rule,
      planned: planned.get(rule) ?? 0,
      least,
      most,
      sigma: Math.sqrt(sum / count),
    })),
  };
}
