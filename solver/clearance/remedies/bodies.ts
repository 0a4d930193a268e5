/** Cures of bodies that cannot be made: an end that reaches, a thinner arbor, a wider bore, bearings, end shake. */
import type { Edit } from '../../movement/index.ts';
import type { Arbor, Movement, Plate, Post, Wheel } from '../../movement/schema.ts';
import type { PlacedMovement } from '../../planting/placed.ts';
import { CURE_STEP, TOUCH } from '../../tolerances.ts';
import { SLIDING_FIT } from '../bodies/plateNeeds.ts';
import { usualBearing, usualBearings } from '../bodies/usualBearing.ts';
import { roundFaceOf, wallOf } from '../contact/wallContact.ts';
import type { BuildCause } from '../findings/buildCause.ts';
import type { FindingCause } from '../findings/cause.ts';
import type { Finding } from '../findings/finding.ts';
import type { Candidate } from './candidate.ts';

/** End shake that is given where none is stated, the greatest first, mm: usual in clocks, and in smaller work. */
const USUAL_END_SHAKES = [0.2, 0.1, 0.05];
/** Metal left under the teeth of a pinion that is cut on its arbor, mm all round: common practice. */
const UNDER_TEETH = 0.1;
/** Play of a wheel's bore on its seat before it is fixed, mm: a sliding fit. */
const SLIDING = 0.01;

type CauseOf<K extends FindingCause['kind']> = Extract<FindingCause, { readonly kind: K }>;

/** Candidates for the causes that keep a movement from being built. */
export function bodyCandidates({ movement, places }: PlacedMovement, { cause }: Finding): Candidate[] {
  const { arbors, wheels } = movement;
  const arborOf = (id: Arbor['id']): Arbor[] => arbors.filter((each) => each.id === id);
  const wheelOf = (id: Wheel['id']): Wheel[] => wheels.filter((each) => each.id === id);
  switch (cause.kind) {
    case 'arborInRoots':
      return arborOf(cause.arbor).flatMap((arbor) => thinner(arbor, cause.roots - 2 * UNDER_TEETH));
    case 'arborInBore':
      return [
        ...wheelOf(cause.wheel).map((wheel) => bored(wheel, cause.diameter + SLIDING)),
        ...arborOf(cause.arbor).flatMap((arbor) => thinner(arbor, cause.bore)),
      ];
    case 'arborInPipe':
      return arborOf(cause.arbor).flatMap((arbor) => thinner(arbor, cause.bore));
    case 'pivotThick':
    case 'pivotThin':
    case 'bodyInHole':
      return pivotCandidates(arborOf(cause.arbor), cause);
    case 'notReached':
    case 'bearingNotReached':
      return arborOf(cause.arbor).flatMap(reaching);
    case 'rimThin':
      return wheelOf(cause.wheel).flatMap((wheel) => wider(wheel, cause.teeth));
    case 'postShort':
    case 'postLong':
      return [fromPlateToPlate(movement, cause)];
    case 'noContact':
      return againstWall(movement, places.get(cause.post), cause);
    case 'holeTight':
      return movement.posts.filter(({ id }) => id === cause.point).map((post) => openHole(post, cause.diameter));
    case 'noBearing':
      return arborOf(cause.arbor).flatMap((arbor) => borne(arbor, movement, places.get(arbor.id)));
    case 'noEndShake':
      return USUAL_END_SHAKES.map((endShake) => withEndShake(cause.arbor, endShake));
    case 'plateInWall':
      return movement.plates.filter(({ id }) => id === cause.plate).flatMap((plate) => smaller(plate, cause.play));
    default:
      return [];
  }
}

/** A diameter that can be turned: down to the step. */
const turned = (diameter: number): number => Math.floor(diameter / CURE_STEP + TOUCH) * CURE_STEP;

function thinner(arbor: Arbor, most: number): Candidate[] {
  const diameter = turned(most);
  if (diameter <= 0 || diameter >= arbor.diameter) return [];
  const bearings = arbor.bearings.map((each) => {
    const { pivot, bore } = each;
    return pivot > diameter ? { ...each, pivot: diameter, bore: bore - pivot + diameter } : each;
  });
  const deed = { kind: 'turnArbor', arbor: arbor.id, diameter } as const;
  return [{ deed, edit: { kind: 'change', id: arbor.id, set: { diameter, bearings } } }];
}

function bored(wheel: Wheel, bore: number): Candidate {
  return {
    deed: { kind: 'openBore', wheel: wheel.id, bore },
    edit: { kind: 'change', id: wheel.id, set: { bore } },
  };
}

/** The fixing hole of a post that goes through its plate, opened to a sliding fit. */
function openHole({ id }: Post, diameter: number): Candidate {
  const hole = diameter + SLIDING_FIT;
  return { deed: { kind: 'openHole', post: id, hole }, edit: { kind: 'change', id, set: { hole } } };
}

/** Pivots with the play that they have: as a new bearing's, as strong as they must be, or as thick as what goes on beyond. */
function pivotCandidates(
  arbors: readonly Arbor[],
  cause: CauseOf<'pivotThick' | 'pivotThin' | 'bodyInHole'>,
): Candidate[] {
  return arbors.flatMap((arbor): Candidate[] => {
    const thin = cause.kind === 'pivotThin' ? Math.ceil(cause.least / CURE_STEP - TOUCH) * CURE_STEP : undefined;
    const pivot = thin ?? arbor.diameter;
    const isMeant = ({ plate, pivot: is }: Arbor['bearings'][number]): boolean =>
      cause.kind === 'bodyInHole' ? plate === cause.plate : cause.kind === 'pivotThin' ? is < pivot : is > pivot;
    const next = cause.kind === 'pivotThick' ? Math.min(usualBearing(arbor).pivot, pivot) : pivot;
    const bearings = arbor.bearings.map((each) =>
      isMeant(each) ? { ...each, pivot: next, bore: next + each.bore - each.pivot } : each,
    );
    const deed = { kind: 'turnPivots', arbor: arbor.id, pivot: next } as const;
    return [{ deed, edit: { kind: 'change', id: arbor.id, set: { bearings } } }];
  });
}

/** Heights left blank reach whatever the arbor has to. */
function reaching({ id, levels }: Arbor): Candidate[] {
  if (!levels) return [];
  return [{ deed: { kind: 'reach', part: id }, edit: { kind: 'change', id, unset: ['levels'] } }];
}

function wider(wheel: Wheel, teeth: number): Candidate[] {
  if (!wheel.arms) return [];
  const rim = Math.ceil(teeth / CURE_STEP - TOUCH) * CURE_STEP;
  const deed = { kind: 'leaveRim', wheel: wheel.id, rim } as const;
  return [{ deed, edit: { kind: 'change', id: wheel.id, set: { arms: { ...wheel.arms, rim } } } }];
}

function fromPlateToPlate(
  { plates }: Movement,
  { post, plates: [under, over] }: BuildCause & { kind: 'postShort' | 'postLong' },
): Candidate {
  const from = plates.find(({ id }) => id === under)?.levels.to ?? 0;
  const to = plates.find(({ id }) => id === over)?.levels.from ?? 0;
  const deed = { kind: 'makeLength', post, length: to - from } as const;
  return { deed, edit: { kind: 'change', id: post, set: { levels: { from, to } } } };
}

function borne(arbor: Arbor, movement: Movement, at: { x: number; y: number } | undefined): Candidate[] {
  const bearings = at ? usualBearings(arbor, movement, at) : [];
  const plates = bearings.flatMap(({ plate }) => plate ?? []);
  if (plates.length === 0) return [];
  // Between two plates it wants room to turn as well.
  const endShake = arbor.endShake > 0 ? arbor.endShake : (USUAL_END_SHAKES[0] ?? 0);
  const deed = { kind: 'putBearings', arbor: arbor.id, plates, endShake } as const;
  return [{ deed, edit: { kind: 'change', id: arbor.id, set: { bearings, endShake } } }];
}

function withEndShake(arbor: Arbor['id'], endShake: number): Candidate {
  return {
    deed: { kind: 'giveEndShake', arbor, endShake },
    edit: { kind: 'change', id: arbor, set: { endShake } },
  };
}

/** Play all round of a plate in its wall that is aimed at, mm: common practice for a dropped-in plate. */
const PLAY_IN_WALL = 0.1;

/** A round plate is turned smaller; another outline is the maker's. */
function smaller({ id, outline }: Plate, play: number): Candidate[] {
  if (outline.kind !== 'circle') return [];
  const radius = turned(outline.radius - PLAY_IN_WALL + play);
  if (radius <= 0) return [];
  return [
    {
      deed: { kind: 'turnPlate', plate: id, diameter: 2 * radius },
      edit: { kind: 'change', id, set: { outline: { ...outline, radius } } },
    },
  ];
}

/** The post moved straight to its round wall; where a rule holds it there, the rule's value. */
function againstWall(
  movement: Movement,
  at: { x: number; y: number } | undefined,
  { post: id, gap }: CauseOf<'noContact'>,
): Candidate[] {
  const post = movement.posts.find((each) => each.id === id);
  const wall = post && wallOf(post, movement);
  const face = wall && at && roundFaceOf(wall, at);
  if (!post || !wall || !face || !at) return [];
  const apart = Math.hypot(at.x - face.centre.x, at.y - face.centre.y);
  const radius = face.radius + (face.inside ? -1 : 1) * (post.diameter / 2);
  if (apart === 0 || radius <= 0) return [];
  const to = [
    face.centre.x + ((at.x - face.centre.x) * radius) / apart,
    face.centre.y + ((at.y - face.centre.y) * radius) / apart,
  ] as const;
  const move: Edit = { kind: 'move', places: [{ id, at: to }] };
  const used = movement.rules.filter((rule) => !rule.leaveOut);
  const held = used.find((rule) => rule.kind === 'held' && rule.point === id);
  const round = used.find((rule) => rule.kind === 'radius' && rule.point === id);
  const set: Edit[] = [
    ...(held ? [{ kind: 'setValue', rule: held.id, value: to } as const] : []),
    ...(round ? [{ kind: 'setValue', rule: round.id, value: radius } as const] : []),
  ];
  return [
    {
      deed: { kind: 'setAgainst', post: id, wall: wall.id, by: gap },
      edit: { kind: 'several', edits: [...set, move] },
    },
  ];
}
