/**
 * The network of a movement: one point per arbor, post and mark, and per round part of the case that a gap is kept
 * from; network rules for every rule that is not left out, and for what the document implies (pipes, sliding posts,
 * drilled places).
 */

import type { Point } from '../../geometry/index.ts';
import { asPoint } from '../../geometry/index.ts';
import type { PartId, PointId } from '../../movement/ids.ts';
import { joinedByRule } from '../../movement/index.ts';
import type { Movement, Post, Rule } from '../../movement/schema.ts';
import { RuleKind } from '../network.ts';
import { type Body, bodiesOf } from './bodies.ts';
import { withFacts } from './factGround.ts';
import type { PlantingGround } from './ground.ts';
import { NetworkBuilder } from './networkBuilder.ts';
import type { RadiusSet, Translation } from './ruleKinds/kind.ts';
import { ruleKindInPlanting } from './ruleKinds/ruleKinds.ts';

/**
 * The planting ground of a movement.
 *
 * @throws never for a movement that reads as valid; rules that cannot be asked are listed in `unusable`
 */
export function networkOf(movement: Movement): PlantingGround {
  const used = movement.rules.filter((rule) => !rule.leaveOut);
  const builder = new NetworkBuilder(new Set(used.flatMap(({ id, duty }) => (duty === 'checks' ? [id] : []))));
  const points = [...movement.arbors, ...movement.posts, ...movement.marks];
  for (const { id, at } of points) builder.addPoint(id, asPoint(at));
  const groups = sharedPlaces(movement, used);

  holdRules(builder, used, groups);
  recordCrossings(builder, points);
  placePipes(builder, movement);
  shareSketches(builder, movement, groups);

  const wheels = new Map(movement.wheels.map((wheel) => [wheel.id, wheel]));
  let bodies: ReturnType<typeof bodiesOf> | undefined;
  // Made where a gap asks for one: most movements have none.
  const bodyOf = (part: PartId): Body | undefined => {
    bodies ??= bodiesOf(movement);
    return bodies(part);
  };
  const sketchOf = (point: PointId): Point => builder.sketchOf(builder.indexOf.get(point) ?? -1);
  const isOnePlace = (a: number, b: number): boolean => {
    const [one, other] = [builder.pointIds[a], builder.pointIds[b]];
    return a === b || (one !== undefined && other !== undefined && groups.get(one)?.has(other) === true);
  };
  const to: Translation = { movement, builder, wheelOf: (id) => wheels.get(id), bodyOf, sketchOf, isOnePlace };
  for (const turn of ['ties', 'rules', 'shares'] as const) {
    for (const rule of movement.rules) {
      const kind = ruleKindInPlanting(rule.kind);
      if ((kind.turn ?? 'rules') !== turn) continue;
      if (rule.leaveOut) kind.note?.(to, rule);
      else kind.ask?.(to, rule);
    }
  }
  askDrilled(builder, movement);
  keepSlides(builder, movement, used);

  return withFacts({
    movement,
    network: builder.network(),
    pointIds: builder.pointIds,
    indexOf: builder.indexOf,
    sources: builder.sources,
    plusMinus: builder.plusMinus,
    networkRulesOf: builder.networkRulesOf,
    heldBy: builder.heldBy,
    lengths: builder.lengths,
    unusable: builder.unusable,
    gapSides: builder.gapSides,
  });
}

/** What is to be asked of drilled points besides: their held places. In the drawing that says nothing; with a hole it shows the difference. */
function askDrilled(builder: NetworkBuilder, movement: Movement): void {
  const drilled = new Set<number>();
  for (const { point, state, at } of movement.made) {
    const index = builder.indexOf.get(point);
    if (index === undefined || state !== 'drilled' || !at || drilled.has(index)) continue;
    drilled.add(index);
    const held = builder.heldBy.get(index);
    if (held?.rule === undefined) continue;
    builder.askPlace(index, builder.sketchOf(index), held.plusMinus, { kind: 'rule', rule: held.rule });
  }
}

/**
 * Held rules by id, so that their order in the file does not choose which of two is taken as the place. Where the point,
 * or one that shares its place, is held already, the rule is asked all the same: a difference is then told.
 */
function holdRules(builder: NetworkBuilder, used: readonly Rule[], groups: SharedPlaces): void {
  const isTaken = (point: PointId): boolean =>
    [point, ...(groups.get(point) ?? [])].some((id) => builder.heldBy.has(builder.indexOf.get(id) ?? -1));
  const held = used
    .flatMap((rule) => {
      const holds = ruleKindInPlanting(rule.kind).holds?.(rule);
      return holds ? [{ rule, ...holds }] : [];
    })
    .sort((a, b) => (a.rule.id < b.rule.id ? -1 : 1));
  for (const { rule, point, at } of held) {
    const { id, plusMinus, duty } = rule;
    const index = builder.indexOf.get(point);
    if (index === undefined) {
      builder.unusable.push({ rule: id, points: [], why: { kind: 'missing', what: 'point' }, lacking: 0 });
      continue;
    }
    const source = { kind: 'rule', rule: id } as const;
    if (duty === 'checks' || isTaken(point)) builder.askPlace(index, at, plusMinus ?? 0, source);
    else builder.hold(index, at, { by: 'rule', rule: id, plusMinus: plusMinus ?? 0 });
  }
}

function recordCrossings(
  builder: NetworkBuilder,
  points: readonly { readonly id: PointId; readonly crossing?: Post['crossing'] }[],
): void {
  for (const { id, crossing } of points) {
    if (!crossing) continue;
    const point = builder.indexOf.get(id);
    const from = builder.indexOf.get(crossing.from);
    const to = builder.indexOf.get(crossing.to);
    if (point === undefined || from === undefined || to === undefined || from === to) continue;
    builder.recordSide(point, crossing.side, from, to);
  }
}

function placePipes(builder: NetworkBuilder, movement: Movement): void {
  for (const { id, ridesOn } of movement.arbors) {
    const pipe = builder.indexOf.get(id);
    const carrier = ridesOn === undefined ? undefined : builder.indexOf.get(ridesOn);
    if (pipe === undefined || carrier === undefined || pipe === carrier) continue;
    builder.rule({ kind: 'pipe', arbor: id }, RuleKind.samePlace, [pipe, carrier], []);
  }
}

/** Points that pipes and same-place rules put at one place, under each of its members. */
type SharedPlaces = ReadonlyMap<PointId, ReadonlySet<PointId>>;

function sharedPlaces(movement: Movement, used: readonly Rule[]): SharedPlaces {
  const groups = new Map<PointId, Set<PointId>>();
  const join = (a: PointId, b: PointId): void => {
    const whole = groups.get(a) ?? new Set([a]);
    for (const member of groups.get(b) ?? [b]) whole.add(member);
    for (const member of whole) groups.set(member, whole);
  };
  for (const { id, ridesOn } of movement.arbors) if (ridesOn !== undefined) join(id, ridesOn);
  for (const rule of used) {
    const joined = joinedByRule(rule);
    if (joined) join(...joined);
  }
  return groups;
}

/** Points at one place are sketched where the arbor that carries the others is, else where the first by id is. */
function shareSketches(builder: NetworkBuilder, movement: Movement, groups: SharedPlaces): void {
  if (groups.size === 0) return;
  const pipes = new Set<PointId>(movement.arbors.filter(({ ridesOn }) => ridesOn !== undefined).map(({ id }) => id));
  for (const group of new Set(groups.values())) {
    const members = [...group].filter((id) => builder.indexOf.has(id)).sort();
    const leader = members.find((id) => !pipes.has(id)) ?? members[0];
    const from = leader === undefined ? undefined : builder.indexOf.get(leader);
    if (from === undefined) continue;
    builder.shareSketch(
      from,
      members.map((id) => builder.indexOf.get(id) ?? from),
    );
  }
}

/** A post that may slide keeps its sketch radius, unless a rule says where it is or how far from the centre. */
function keepSlides(builder: NetworkBuilder, movement: Movement, used: readonly Rule[]): void {
  if (!movement.posts.some((post) => post.slidesAbout !== undefined)) return;
  const setElsewhere = postsWithRadius(movement, used);
  for (const { id, slidesAbout } of movement.posts) {
    if (slidesAbout === undefined || setElsewhere.has(`${id} ${slidesAbout}`) || setElsewhere.has(id)) continue;
    const post = builder.indexOf.get(id);
    const centre = builder.indexOf.get(slidesAbout);
    if (post === undefined || centre === undefined || post === centre || builder.heldBy.has(post)) continue;
    const { x, y } = builder.sketchOf(post);
    const { x: cx, y: cy } = builder.sketchOf(centre);
    const radius = Math.hypot(x - cx, y - cy);
    if (radius > 0) builder.rule({ kind: 'slide', post: id }, RuleKind.distance, [post, centre], [radius]);
  }
}

/** Posts whose distance from a centre a rule sets (`post centre`), or whose place follows from another's (`post`). */
function postsWithRadius(movement: Movement, used: readonly Rule[]): ReadonlySet<string> {
  const found = new Set<string>();
  const pair = (a: string, b: string): void => {
    found.add(`${a} ${b}`).add(`${b} ${a}`);
  };
  const rounds = new Set<string>(
    [...movement.walls, ...movement.plates, ...movement.openings]
      .filter(({ outline }) => outline.kind === 'circle')
      .map(({ id }) => id),
  );
  const set: RadiusSet = { pair, place: (part) => void found.add(part), isRound: (part) => rounds.has(part) };
  // What is told to check sets nothing.
  for (const rule of used) if (rule.duty !== 'checks') ruleKindInPlanting(rule.kind).sets?.(rule, set);
  return found;
}
