/** What to try where no single change cures a finding, and why none does. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { assemblyOrder } from '../checks/assemblyOrder.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';
import type { Advice } from './adviceKinds.ts';
import { countsTried, ringOf } from './rings.ts';

/** Causes that mean nothing where rules disagree about the places of their parts. */
const HANGS_ON_PLACES: ReadonlySet<FindingCause['kind']> = new Set([
  'gap',
  'underShake',
  'ringMisses',
  'ringSet',
  'heldDown',
  'breaksOut',
  'nearEdge',
  'holesMeet',
  'outsideCase',
  'postShort',
  'postLong',
]);

/** Do rules disagree about the place of a part, or of the arbor that it is on? */
export function isContested({ movement, places }: PlacedMovement, { parts }: Finding): boolean {
  const arbors = movement.wheels.filter(({ id }) => parts.includes(id)).map(({ arbor }) => arbor);
  return [...places.values()].some(
    ({ id, state }) => state === 'contested' && (parts.includes(id) || arbors.some((arbor) => arbor === id)),
  );
}

/** What to try for a finding that no single change cures: by what is wrong, so that no finding is told another's. */
export function adviceFor(placed: PlacedMovement, finding: Finding): Advice {
  const { kind } = finding.cause;
  if (HANGS_ON_PLACES.has(kind) && isContested(placed, finding)) return { kind: 'contested' };
  switch (kind) {
    case 'ringMisses':
    case 'ringSet':
      return ringAdvice(placed, finding);
    case 'heldDown':
      return assemblyAdvice(placed, finding);
    default:
      return { kind };
  }
}

function ringAdvice(placed: PlacedMovement, finding: Finding): Advice {
  const ring = ringOf(placed.movement, finding);
  const [nearest] = ring ? countsTried(placed, ring) : [];
  if (!nearest) return { kind: 'ring' };
  const { wheel, teeth, miss } = nearest;
  return { kind: 'ring', nearest: { wheel: wheel.id, teeth, miss } };
}

function assemblyAdvice(placed: PlacedMovement, finding: Finding): Advice {
  const { groups } = assemblyOrder(placed);
  const [held] = finding.parts;
  const before = groups.slice(
    0,
    groups.findIndex((group) => group.some((id) => id === held)),
  );
  return { kind: 'assembly', before: before.flat() };
}
