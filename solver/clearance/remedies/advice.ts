/** What to try where no single change cures a finding, and why none does. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { assemblyOrder } from '../checks/assemblyOrder.ts';
import type { Finding } from '../findings/finding.ts';
import { wheelLabel } from '../solids/wheelSolids.ts';
import { countsTried, ringOf } from './rings.ts';

const GAP =
  'No single change that was tried clears it without making something else too close. Try leaving out a rule that settles one of the two and sliding it, another crossing, a smaller module, or Find a planting.';

const CONTESTED =
  'Rules disagree about where its parts stand, so nothing that would clear them there means anything yet: settle what disagrees first.';

/** Do rules disagree about the place of a part, or of the arbor that it is on? */
export function isContested({ movement, places }: PlacedMovement, { parts }: Finding): boolean {
  const arbors = movement.wheels.filter(({ id }) => parts.includes(id)).map(({ arbor }) => arbor);
  return [...places.values()].some(
    ({ id, state }) => state === 'contested' && (parts.includes(id) || arbors.some((arbor) => arbor === id)),
  );
}

/** Whole sentences for the maker. */
export function adviceFor(placed: PlacedMovement, finding: Finding): string {
  if (finding.kind !== 'planting' && finding.kind !== 'size' && isContested(placed, finding)) return CONTESTED;
  switch (finding.kind) {
    case 'fouls':
    case 'tooClose':
      return GAP;
    case 'ring':
      return ringAdvice(placed, finding);
    case 'turning':
      return 'The counts and couplings decide this, and no single change of one settles it without another fault. Look the train over in Counts, or add what is named.';
    case 'assembly':
      return assemblyAdvice(placed, finding);
    case 'stack':
      return 'No hub or collar that could be shortened or added gives the end shake back. Move a wheel along its arbor, make one thinner, or set the plates farther apart.';
    case 'bearing':
      return 'A hole wants metal around it: move the arbor, take a smaller bush, or give the plate another outline.';
    case 'case':
      return 'Move or shrink the outline so that it lies within its plate, or draw one outline round both openings.';
    case 'planting':
      return 'The rules contradict each other: leave one of them out, or read its measure again.';
    case 'size':
    case 'depth':
      return 'Neither wheel can be changed alone without another fault: look at the pair in its depth view, and change the size, the height or the distance of both.';
  }
}

function ringAdvice(placed: PlacedMovement, finding: Finding): string {
  const ring = ringOf(placed.movement, finding);
  const [nearest] = ring ? countsTried(placed, ring) : [];
  const counts = nearest
    ? `The nearest count of one wheel is ${nearest.teeth} teeth for ${wheelLabel(nearest.wheel)}: its last depth misses by ${nearest.miss.toFixed(3)} of a tooth then.`
    : 'No count of one wheel was found that closes it.';
  return `${counts} Leave out a rule that settles one of its arbors, so that it can move to where the teeth meet, or take one depth out of the ring.`;
}

function assemblyAdvice(placed: PlacedMovement, finding: Finding): string {
  const { groups } = assemblyOrder(placed);
  const name = (id: string): string => placed.movement.arbors.find((arbor) => arbor.id === id)?.name ?? id;
  const [held] = finding.parts;
  const before = groups.slice(
    0,
    groups.findIndex((group) => group.some((id) => id === held)),
  );
  const first = before.length > 0 ? ` after ${before.flat().map(name).join(', ')}` : '';
  return `Make what stands over it removable: a head that screws off, or a part of the frame that comes away. It is then lifted out${first}.`;
}
