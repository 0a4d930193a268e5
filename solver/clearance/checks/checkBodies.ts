/** Arbors, and what stands on them, that cannot be turned or put together as drawn, wherever their points stand. */
import type { Arbor, Movement, Plate, Wheel } from '../../movement/schema.ts';
import { sizeOfWheel } from '../../teeth/index.ts';
import { TOUCH } from '../../tolerances.ts';
import { heightsOfArbor, heightsOfBearing } from '../bodies/heights.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';
import { type PartsIndex, solidPartsOf } from '../solids/partsIndex.ts';
import type { Piece } from '../solids/piece.ts';
import type { Heights } from '../solids/solid.ts';

/**
 * A pivot longer than this many of its diameters bends or breaks in the turning, and one of less than this share of its
 * arbor has no strength beside it: common practice of the trade, careful rather than exact.
 */
const LONGEST_PIVOT = 8;
const THINNEST_SHARE = 1 / 6;

/** Everything that is wrong within the bodies of a movement. */
export function findingsOfBodies(movement: Movement): readonly Finding[] {
  const parts = solidPartsOf(movement);
  return movement.arbors.flatMap((arbor) => {
    const wheels = parts.wheelsOn.get(arbor.id) ?? [];
    return [
      ...wheels.flatMap((wheel) => [...tooThick(arbor, wheel, movement), ...thinRim(wheel, movement)]),
      ...thickInPipe(arbor, parts),
      ...thickInHoles(arbor, parts),
      ...pivots(arbor, parts),
      ...notReached(arbor, wheels, parts),
    ];
  });
}

function stop(
  kind: 'body' | 'bearing',
  parts: Finding['parts'],
  cause: FindingCause,
  more: Partial<Finding> = {},
): Finding {
  return { key: `${kind} ${cause.kind} ${parts.join(' ')}`, kind, severity: 'stops', parts, cause, ...more };
}

/** Teeth are cut into a solid blank, or the wheel is put on through its bore. */
function tooThick(arbor: Arbor, wheel: Wheel, movement: Movement): Finding[] {
  const { diameter } = arbor;
  const parts = [arbor.id, wheel.id] as const;
  const of = { arbor: arbor.id, wheel: wheel.id, diameter };
  if (wheel.bore !== undefined && wheel.bore > 0 && diameter > wheel.bore + TOUCH) {
    return [
      stop('body', parts, { kind: 'arborInBore', ...of, bore: wheel.bore }, { gap: (wheel.bore - diameter) / 2 }),
    ];
  }
  const roots = 2 * sizeOfWheel(wheel, movement).rootRadius;
  if (wheel.internal || diameter < roots - TOUCH) return [];
  return [stop('body', parts, { kind: 'arborInRoots', ...of, roots }, { gap: (roots - diameter) / 2 })];
}

/** A rim bears its teeth: it is at least as thick as they are deep (common practice for crossing out). */
function thinRim(wheel: Wheel, movement: Movement): Finding[] {
  if (!wheel.arms) return [];
  const { tipRadius, rootRadius } = sizeOfWheel(wheel, movement);
  const teeth = Math.abs(tipRadius - rootRadius);
  const { rim } = wheel.arms;
  if (rim >= teeth - TOUCH) return [];
  return [
    stop(
      'body',
      [wheel.id],
      { kind: 'rimThin', wheel: wheel.id, rim, teeth },
      { severity: 'warns', gap: rim, wanted: teeth },
    ),
  ];
}

/** A pipe goes over what it rides on: through its bore, and through the bushes in it that run there. */
function thickInPipe(pipe: Arbor, { arbors }: PartsIndex): Finding[] {
  const inside = pipe.ridesOn === undefined ? undefined : arbors.get(pipe.ridesOn);
  if (!inside) return [];
  const bores = pipe.bearings.filter(({ plate }) => plate === undefined).map(({ bore }) => bore);
  const bore = Math.min(...bores, pipe.pipeBore ?? pipe.diameter);
  if (inside.diameter <= bore + TOUCH) return [];
  const cause = { kind: 'arborInPipe', arbor: inside.id, pipe: pipe.id, diameter: inside.diameter, bore } as const;
  return [stop('body', [inside.id, pipe.id], cause, { gap: (bore - inside.diameter) / 2 })];
}

/** An arbor is put into its hole from one side: past the hole it is no thicker than the hole is wide. */
function thickInHoles(arbor: Arbor, parts: PartsIndex): Finding[] {
  const whole = heightsOfArbor(arbor, parts.movement);
  if (!whole) return [];
  return arbor.bearings.flatMap((bearing): Finding[] => {
    const plate = plateOf(bearing, parts);
    const run = heightsOfBearing(bearing, parts);
    if (!plate || !run || arbor.diameter <= bearing.bore + TOUCH || bearing.kind === 'cock') return [];
    const goesOn = { from: Math.min(run.from, plate.levels.from), to: Math.max(run.to, plate.levels.to) };
    if (whole.from >= goesOn.from - TOUCH || whole.to <= goesOn.to + TOUCH) return [];
    const { diameter } = arbor;
    const cause = { kind: 'bodyInHole', arbor: arbor.id, plate: plate.id, diameter, bore: bearing.bore } as const;
    return [stop('body', [arbor.id, plate.id], cause, { gap: (bearing.bore - diameter) / 2 })];
  });
}

function plateOf({ plate }: Arbor['bearings'][number], { plates }: PartsIndex): Plate | undefined {
  return plate === undefined ? undefined : plates.get(plate);
}

/** Pivots thicker than what they are turned on, or too thin for it. Of a pipe's own bushes what it rides on has them. */
function pivots(arbor: Arbor, { arbors }: PartsIndex): Finding[] {
  const found: Finding[] = [];
  const worst = new Set<string>();
  for (const { plate, pivot, length } of arbor.bearings) {
    const isInside = arbor.ridesOn !== undefined && plate === undefined;
    const turned = isInside ? arbors.get(arbor.ridesOn ?? arbor.id) : arbor;
    if (!turned) continue;
    const { id, diameter } = turned;
    const least = Math.max(length / LONGEST_PIVOT, diameter * THINNEST_SHARE);
    if (pivot > diameter + TOUCH && !worst.has('thick')) {
      worst.add('thick');
      found.push(
        stop('bearing', [id], { kind: 'pivotThick', arbor: id, pivot, diameter }, { key: `bearing pivot ${arbor.id}` }),
      );
    } else if (pivot < least - TOUCH && !isInside && !worst.has('thin')) {
      worst.add('thin');
      const isBroken = pivot * LONGEST_PIVOT < length - TOUCH;
      const cause = { kind: 'pivotThin', arbor: id, pivot, least } as const;
      found.push(stop('bearing', [id], cause, { severity: isBroken ? 'stops' : 'warns', gap: pivot, wanted: least }));
    }
  }
  return found;
}

/** Wheels, collars and hands beyond the end of their arbor, and bearings that it does not come to. */
function notReached(arbor: Arbor, wheels: readonly Wheel[], parts: PartsIndex): Finding[] {
  const whole = arbor.levels && heightsOfArbor(arbor, parts.movement);
  if (!whole) return [];
  const fixed = piecesOn(arbor, wheels).flatMap(({ piece, seat }): Finding[] => {
    const reached = Math.min(seat.to, whole.to) - Math.max(seat.from, whole.from);
    // Half of its seat holds a wheel; a hand or a collar that the arbor only touches is held by nothing.
    const half = (seat.to - seat.from) / 2;
    if (reached >= half - TOUCH) return [];
    const short = seat.to - seat.from - Math.max(reached, 0) + Math.max(-reached, 0);
    const cause = { kind: 'notReached', arbor: arbor.id, piece, short } as const;
    const severity = reached <= TOUCH ? 'stops' : 'warns';
    const named = piece.part === arbor.id ? [arbor.id] : [arbor.id, piece.part];
    return [
      stop('body', named, cause, {
        severity,
        gap: -short,
        key: `body notReached ${named.join(' ')} ${piece.piece} ${piece.nth ?? ''}`,
      }),
    ];
  });
  return [...fixed, ...bearingsNotReached(arbor, whole, parts)];
}

function piecesOn(arbor: Arbor, wheels: readonly Wheel[]): { readonly piece: Piece; readonly seat: Heights }[] {
  const seats = wheels.map((wheel) => {
    const { hub, level, thickness } = wheel;
    const seat = { from: Math.min(level, hub?.from ?? level), to: Math.max(level + thickness, hub?.to ?? level) };
    return { piece: { part: wheel.id, piece: 'whole' } as const, seat };
  });
  const collars = arbor.collars.map((seat) => ({ piece: { part: arbor.id, piece: 'collar' } as const, seat }));
  const swept = (arbor.swept ?? []).map((seat, nth) => ({
    piece: { part: arbor.id, piece: 'swept', nth } as const,
    seat,
  }));
  return [...seats, ...collars, ...swept];
}

/** Heights may be told from shoulder to shoulder or with the pivots: to the face of its plate an arbor comes either way. */
function bearingsNotReached(arbor: Arbor, whole: Heights, parts: PartsIndex): Finding[] {
  return arbor.bearings.flatMap((bearing): Finding[] => {
    const plate = plateOf(bearing, parts);
    const run = heightsOfBearing(bearing, parts);
    if (!plate || !run) return [];
    const short = Math.max(run.from - whole.to, whole.from - run.to);
    if (short <= arbor.endShake + TOUCH) return [];
    const cause = { kind: 'bearingNotReached', arbor: arbor.id, plate: plate.id, short } as const;
    return [stop('bearing', [arbor.id, plate.id], cause, { gap: -short })];
  });
}
