/** What to try where no single change cures a finding, and why none does. */
import type { PlacedMovement } from '../../planting/placed.ts';
import { assemblyOrder } from '../checks/assemblyOrder.ts';
import type { Finding } from '../findings/finding.ts';
import type { Advice } from './adviceKinds.ts';
import { countsTried, ringOf } from './rings.ts';

/** Do rules disagree about the place of a part, or of the arbor that it is on? */
export function isContested({ movement, places }: PlacedMovement, { parts }: Finding): boolean {
  const arbors = movement.wheels.filter(({ id }) => parts.includes(id)).map(({ arbor }) => arbor);
  return [...places.values()].some(
    ({ id, state }) => state === 'contested' && (parts.includes(id) || arbors.some((arbor) => arbor === id)),
  );
}

/** The advice for each kind of finding that needs no look at the movement. */
const PLAIN: Readonly<Record<Exclude<Finding['kind'], 'ring' | 'assembly'>, Advice>> = {
  fouls: { kind: 'gap' },
  tooClose: { kind: 'gap' },
  turning: { kind: 'turning' },
  stack: { kind: 'stack' },
  bearing: { kind: 'bearing' },
  case: { kind: 'case' },
  planting: { kind: 'planting' },
  size: { kind: 'pair' },
  depth: { kind: 'pair' },
};

/** What to try for a finding that no single change cures. */
export function adviceFor(placed: PlacedMovement, finding: Finding): Advice {
  if (finding.kind !== 'planting' && finding.kind !== 'size' && isContested(placed, finding)) {
    return { kind: 'contested' };
  }
  if (finding.kind === 'ring') return ringAdvice(placed, finding);
  if (finding.kind === 'assembly') return assemblyAdvice(placed, finding);
  return PLAIN[finding.kind];
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
