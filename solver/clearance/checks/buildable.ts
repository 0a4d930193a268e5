/** The one list before metal is cut: what stops the movement, and what is missing. Empty: it can be made as drawn. */
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Finding } from '../findings/finding.ts';
import { checkMissing } from './checkMissing.ts';
import { checkMovement } from './checkMovement.ts';

/** Faults that stop a movement, in the order of the check, then what is not there yet. */
export interface Buildable {
  readonly stops: readonly Finding[];
  readonly missing: readonly Finding[];
  /** Points that are not settled, so that nothing can be told of where they stand. */
  readonly unsettled: number;
}

/**
 * Whether a placed movement can be made and put together as drawn.
 *
 * @param findings the check's, where it has been run already
 */
export function buildable(placed: PlacedMovement, findings: readonly Finding[] = checkMovement(placed)): Buildable {
  const stops = findings.filter(({ severity }) => severity === 'stops');
  const unsettled = [...placed.places.values()].filter(({ state }) => state === 'loose').length;
  return { stops, missing: checkMissing(placed.movement), unsettled };
}

/** Is nothing wrong and nothing missing? */
export function isBuildable({ stops, missing, unsettled }: Buildable): boolean {
  return stops.length === 0 && missing.length === 0 && unsettled === 0;
}
