/** Cures of stacks: collars where nothing stops a pipe, a face taken off where the room is short, a longer end shake. */

import type { ArborId } from '../../movement/ids.ts';
import type { Edit } from '../../movement/index.ts';
import type { Arbor, Movement } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { CURE_STEP } from '../../tolerances.ts';
import { heightsOfArbor } from '../bodies/heights.ts';
import type { Finding } from '../findings/finding.ts';
import { solidPartsOf } from '../solids/partsIndex.ts';
import type { Piece } from '../solids/piece.ts';
import type { Heights } from '../solids/solid.ts';
import type { PipeStack, PipeStop } from '../stacks/pipeStack.ts';
import { type Stack, stackOf } from '../stacks/stackOf.ts';
import type { StackPiece } from '../stacks/stackPiece.ts';
import type { Candidate } from './candidate.ts';
import type { CureDeed, NewCollar } from './deed.ts';

/** How much wider than what it meets a collar is, and its length where it stands alone, mm: habit of the trade. */
const COLLAR_SEAT = 2;
const COLLAR_LENGTH = 2;

/** Changes that give an arbor or a pipe its end shake. */
export function stackCandidates({ movement }: PlacedMovement, finding: Finding): Candidate[] {
  if (finding.kind !== 'stack') return [];
  const arbor = movement.arbors.find(({ id }) => id === finding.parts[0]);
  if (!arbor) return [];
  const stack = stackOf(movement, arbor.id);
  if (stack.kind === 'none') return [];
  const longer = longerShake(arbor, stack);
  if (stack.kind === 'pipe') return [...collars(movement, arbor, stack), ...longer];
  return [...shorter(movement, arbor, stack), ...longer];
}

/** Collars that leave the pipe its stated end shake, half of it on each side. */
function collars(movement: Movement, pipe: Arbor, stack: PipeStack): Candidate[] {
  const half = pipe.endShake / 2;
  const edits: Edit[] = [];
  const made: NewCollar[] = [];
  const own: (Heights & { diameter: number })[] = [];
  for (const [side, stop] of [
    ['below', stack.below],
    ['above', stack.above],
  ] as const) {
    if (stop && stop.gap <= half) continue;
    const collar = stop ? filling(pipe, stop, half, side) : undefined;
    if (collar) {
      own.push(collar);
      made.push({ arbor: pipe.id, ...collar });
      continue;
    }
    const held = retaining(movement, pipe, half, side);
    if (!held) return [];
    edits.push(held.edit);
    made.push(held.collar);
  }
  if (own.length > 0) {
    edits.push({ kind: 'change', id: pipe.id, set: { collars: [...pipe.collars, ...own], ...reaching(pipe, own) } });
  }
  return edits.length === 0 ? [] : [{ deed: { kind: 'putCollars', collars: made }, edit: { kind: 'several', edits } }];
}

/** Ends of the pipe that are stated, moved out to bear its new collars. */
function reaching({ levels }: Arbor, collars: readonly Heights[]): Pick<Partial<Arbor>, 'levels'> {
  if (!levels) return {};
  const { from, to } = levels;
  return {
    levels: {
      ...(from === undefined ? {} : { from: Math.min(from, ...collars.map((collar) => collar.from)) }),
      ...(to === undefined ? {} : { to: Math.max(to, ...collars.map((collar) => collar.to)) }),
    },
  };
}

/** A collar on the pipe itself that fills the room up to its stop, but for half of the end shake. */
function filling(pipe: Arbor, stop: PipeStop, half: number, side: 'below' | 'above'): Heights & { diameter: number } {
  const diameter = Math.max(pipe.diameter, 2 * stop.inner) + COLLAR_SEAT;
  return side === 'below'
    ? { diameter, from: stop.at + half, to: stop.face }
    : { diameter, from: stop.face, to: stop.at - half };
}

/** A collar on the arbor inside, beyond the end of the pipe. */
function retaining(
  movement: Movement,
  pipe: Arbor,
  half: number,
  side: 'below' | 'above',
): { readonly edit: Edit; readonly collar: NewCollar } | undefined {
  const inside = solidPartsOf(movement).arbors.get(pipe.ridesOn ?? pipe.id);
  const span = heightsOfArbor(pipe, movement);
  const reach = inside && heightsOfArbor(inside, movement);
  if (!inside || !span || !reach) return undefined;
  const from = side === 'above' ? span.to + half : span.from - half - COLLAR_LENGTH;
  const to = from + COLLAR_LENGTH;
  if (from < reach.from || to > reach.to) return undefined;
  const collar = { diameter: Math.max(inside.diameter, pipe.pipeBore ?? 0) + COLLAR_SEAT, from, to };
  const edit: Edit = { kind: 'change', id: inside.id, set: { collars: [...inside.collars, collar] } };
  return { edit, collar: { arbor: inside.id, ...collar } };
}

/** Room that is short, or that errors can use up: a greater end shake, which the room must allow. */
function longerShake(arbor: Arbor, stack: Exclude<Stack, { kind: 'none' }>): Candidate[] {
  const { room, statistical } = stack;
  if (room === undefined || !statistical || stack.kind === 'pipe') return [];
  const error = arbor.endShake - statistical[0];
  const endShake = Math.ceil((error + CURE_STEP / 2) / CURE_STEP) * CURE_STEP;
  if (statistical[0] > 0 || endShake > room) return [];
  const deed = { kind: 'giveEndShake', arbor: arbor.id, endShake } as const;
  return [{ deed, edit: { kind: 'change', id: arbor.id, set: { endShake } } }];
}

/** The outermost hub or collar on either side is shortened by what is missing. */
function shorter(movement: Movement, arbor: Arbor, stack: Extract<Stack, { kind: 'stack' }>): Candidate[] {
  const missing = Math.ceil((arbor.endShake - stack.room - 1e-9) / CURE_STEP) * CURE_STEP;
  if (missing <= 0) return [];
  const solid = stack.pieces.filter(({ kind }) => kind !== 'bare');
  const top = solid.reduce<StackPiece | undefined>((a, b) => (!a || b.to > a.to ? b : a), undefined);
  const bottom = solid[0];
  return [
    ...(top ? shortened(movement, arbor.id, top, { to: top.to - missing }, missing) : []),
    ...(bottom ? shortened(movement, arbor.id, bottom, { from: bottom.from + missing }, missing) : []),
  ];
}

function shortened(movement: Movement, id: ArborId, piece: StackPiece, set: Partial<Heights>, by: number): Candidate[] {
  const next = { from: piece.from, to: piece.to, ...set };
  if (next.to - next.from < by) return [];
  const face = set.to === undefined ? 'below' : 'above';
  const deedOf = (kind: Piece['piece']): CureDeed => {
    return { kind: 'shorten', piece: { part: piece.part, piece: kind }, by, from: face };
  };
  const wheel = movement.wheels.find((each) => each.id === piece.part);
  if (piece.kind === 'hub' && wheel?.hub) {
    return [{ deed: deedOf('hub'), edit: { kind: 'change', id: wheel.id, set: { hub: { ...wheel.hub, ...set } } } }];
  }
  const arbor = movement.arbors.find((each) => each.id === id);
  if (piece.kind !== 'collar' || !arbor) return [];
  const collars = arbor.collars.map((collar) =>
    collar.from === piece.from && collar.to === piece.to ? { ...collar, ...set } : collar,
  );
  return [{ deed: deedOf('collar'), edit: { kind: 'change', id, set: { collars } } }];
}
