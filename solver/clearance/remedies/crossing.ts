/** Plant an arbor at the other crossing of its two loci. */
import type { ArborId, PartId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import { otherCrossing } from '../../planting/index.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** A candidate for each arbor of the finding that has a second crossing. */
export function crossingCandidates(placed: PlacedMovement, finding: Finding): Candidate[] {
  return arborsOf(placed, finding.parts).flatMap((id): Candidate[] => {
    const other = otherCrossing(placed, id);
    if (!other) return [];
    const { point, at, crossing } = other;
    const edits: Edit[] = [
      { kind: 'move', places: [{ id: point, at: [at.x, at.y] }] },
      crossing ? { kind: 'setCrossing', point, crossing } : { kind: 'setCrossing', point },
    ];
    return [{ deed: { kind: 'otherCrossing', arbor: id }, edit: { kind: 'several', edits } }];
  });
}

/** The arbors that a finding's parts stand on. */
function arborsOf({ movement }: PlacedMovement, parts: readonly PartId[]): ArborId[] {
  const named = movement.arbors.filter((arbor) => parts.includes(arbor.id)).map((arbor) => arbor.id);
  const carrying = movement.wheels.filter((wheel) => parts.includes(wheel.id)).map((wheel) => wheel.arbor);
  return [...new Set([...named, ...carrying])];
}
