/** The kernel's door: a network must be whole and finite before anything is computed from it. */
import { type Network, RuleKind } from '../network.ts';
import { pointsOfKind } from './residual.ts';

/** A broken promise of the caller: the message names the point or rule, what was found and what was expected. */
export class NetworkError extends Error {
  override readonly name = 'NetworkError';
}

/**
 * Checks counts, indices and numbers of a network.
 *
 * @throws NetworkError naming the first point or rule that is wrong
 */
export function checkNetwork(network: Network): void {
  const { pointCount, ruleCount, coords, points, kinds, values } = network;
  if (coords.length < 2 * pointCount || points.length < 4 * ruleCount || values.length < 3 * ruleCount) {
    throw new NetworkError(
      `${pointCount} points and ${ruleCount} rules need ${2 * pointCount} coordinates, ${4 * ruleCount} rule points and ` +
        `${3 * ruleCount} values; found ${coords.length}, ${points.length} and ${values.length}`,
    );
  }
  // 0 × number is 0 for every finite number, so one sum shows whether any is not.
  let sum = 0;
  for (let i = 0; i < 2 * pointCount; i++) sum += 0 * coords[i]!; // within the length just checked
  for (let i = 0; i < 3 * ruleCount; i++) sum += 0 * values[i]!; // as above
  if (sum !== 0) nameTheNumber(network);
  for (let r = 0; r < ruleCount; r++) {
    const kind = kinds[r]!; // as above
    if (!(kind <= RuleKind.between)) {
      throw new NetworkError(`rule ${r}: kind ${kind}, expected 0 to ${RuleKind.between}`);
    }
    const [a, b] = kind === RuleKind.distance ? [points[4 * r]!, points[4 * r + 1]!] : [-1, -1]; // as above
    if (a >= 0 && b >= 0 && a < pointCount && b < pointCount) continue;
    const used = pointsOfKind(kind, points[4 * r + 2]!); // as above
    for (let k = 0; k < used; k++) {
      const point = points[4 * r + k]!; // as above
      if (point >= 0 && point < pointCount) continue;
      throw new NetworkError(`rule ${r}: point ${k + 1} is ${point}, expected an index from 0 to ${pointCount - 1}`);
    }
  }
}

function nameTheNumber({ pointCount, ruleCount, coords, values }: Network): never {
  for (let i = 0; i < 2 * pointCount; i++) {
    if (Number.isFinite(coords[i])) continue;
    throw new NetworkError(`point ${i >> 1}: ${i % 2 ? 'y' : 'x'} is ${coords[i]}, expected a finite number of mm`);
  }
  for (let i = 0; i < 3 * ruleCount; i++) {
    if (Number.isFinite(values[i])) continue;
    throw new NetworkError(`rule ${Math.floor(i / 3)}: value ${(i % 3) + 1} is ${values[i]}, expected a finite number`);
  }
  throw new NetworkError('a number is not finite');
}
