/**
 * One rule of the movement as network rules.
 *
 * A rule that names a missing part, or the same point twice, asks nothing of the network: it is listed as unusable, so
 * that it is told and not lost. (Validation refuses most of these; planting must not fall over them.)
 */
import type { Point } from '../../geometry/index.ts';
import type { PartId, PointId, WheelId } from '../../movement/ids.ts';
import type { Movement, Rule, RuleOf, Wheel } from '../../movement/schema.ts';
import type { NotKeptCause } from '../disagreement.ts';
import { RuleKind } from '../network.ts';
import type { Body } from './bodies.ts';
import { depthLength } from './depthLengths.ts';
import { type GapRule, gapRule } from './gapRules.ts';
import type { RuleSource } from './ground.ts';
import type { NetworkBuilder } from './networkBuilder.ts';

/** What the translation of a rule may ask. */
export interface Translation {
  readonly movement: Movement;
  readonly builder: NetworkBuilder;
  readonly wheelOf: (id: WheelId) => Wheel | undefined;
  readonly bodyOf: (part: PartId) => Body | undefined;
  readonly sketchOf: (point: PointId) => Point;
}

const RADIANS = Math.PI / 180;
const TURN = 2 * Math.PI;

/** Adds a rule (not a held one) to the network. */
export function translateRule(to: Translation, rule: Exclude<Rule, RuleOf<'held'>>): void {
  const source: RuleSource = { kind: 'rule', rule: rule.id };
  const { builder } = to;
  const plusMinus = rule.plusMinus ?? 0;
  switch (rule.kind) {
    case 'depth':
      translateDepth(to, rule);
      return;
    case 'clearBy':
      translateGap(to, rule);
      return;
    case 'distance':
    case 'radius': {
      const points = pointsOf(to, rule, rule.kind === 'distance' ? rule.points : [rule.point, rule.centre]);
      if (!points) return;
      builder.rule(source, RuleKind.distance, points, [rule.length], plusMinus);
      builder.lengths.set(rule.id, { length: rule.length, ...(rule.plusMinus === undefined ? {} : { plusMinus }) });
      return;
    }
    case 'bearing': {
      const named = rule.reference === undefined ? [] : [rule.reference];
      const points = pointsOf(to, rule, [rule.point, rule.centre, ...named]);
      if (points) builder.rule(source, RuleKind.ray, points, [rule.angle * RADIANS], plusMinus * RADIANS);
      return;
    }
    case 'opposite': {
      const points = pointsOf(to, rule, [rule.point, rule.centre, rule.of]);
      if (points) builder.rule(source, RuleKind.opposite, points, [], plusMinus);
      return;
    }
    case 'samePlace': {
      const points = pointsOf(to, rule, rule.points);
      if (points) builder.rule(source, RuleKind.samePlace, points, [], plusMinus);
      return;
    }
    case 'inLine': {
      const points = pointsOf(to, rule, [rule.point, ...rule.through]);
      if (points) builder.rule(source, RuleKind.inLine, points, [], plusMinus);
      return;
    }
    case 'sameRadius':
    case 'evenSpacing':
      translateRing(to, rule);
  }
}

/** Every point of a ring is compared with the first one. */
function translateRing(to: Translation, rule: RuleOf<'sameRadius'> | RuleOf<'evenSpacing'>): void {
  const source: RuleSource = { kind: 'rule', rule: rule.id };
  const indices = pointsOf(to, rule, [rule.centre, ...rule.points]);
  if (!indices) return;
  const [centre = -1, first = -1, ...others] = indices;
  others.forEach((other, index) => {
    if (rule.kind === 'sameRadius') {
      to.builder.rule(source, RuleKind.sameRadius, [other, first, centre], [], rule.plusMinus ?? 0);
      return;
    }
    const turned = (TURN * (index + 1)) / rule.points.length;
    // Half a turn is told without a sine, so that it stays exact.
    if (2 * (index + 1) === rule.points.length) {
      to.builder.rule(source, RuleKind.opposite, [other, centre, first], [], rule.plusMinus ?? 0);
    } else {
      to.builder.rule(source, RuleKind.turned, [other, first, centre], [turned], rule.plusMinus ?? 0);
    }
  });
}

function translateDepth(to: Translation, rule: RuleOf<'depth'>): void {
  const wheels = rule.wheels.map((id) => to.wheelOf(id));
  const [a, b] = wheels;
  if (!a || !b) {
    refuse(to, rule, [], { kind: 'missing', what: 'wheel' });
    return;
  }
  const points = pointsOf(to, rule, [a.arbor, b.arbor]);
  if (!points) return;
  const depth = depthLength(rule, a, b, to.movement);
  if (!(depth.length > 0)) {
    refuse(to, rule, [a.arbor, b.arbor], { kind: 'noDistance', distance: depth.length });
    return;
  }
  to.builder.lengths.set(rule.id, depth);
  const isCalculated = depth.length === depth.calculated && rule.use === 'calculated';
  const source: RuleSource = { kind: 'rule', rule: rule.id };
  to.builder.rule(source, RuleKind.distance, points, [depth.length], depth.plusMinus ?? 0, isCalculated ? 1 : 0);
}

/** The three distances of a depth that is left out, so that they can still be read. */
export function noteDepth(to: Translation, rule: RuleOf<'depth'>): void {
  const [a, b] = rule.wheels.map((id) => to.wheelOf(id));
  if (a && b) to.builder.lengths.set(rule.id, depthLength(rule, a, b, to.movement));
}

function translateGap(to: Translation, rule: RuleOf<'clearBy'>): void {
  const bodies = rule.parts.map((part) => to.bodyOf(part));
  const [a, b] = bodies;
  if (!a || !b) {
    refuse(to, rule, [], { kind: 'missing', what: 'part' });
    return;
  }
  const asked = gapRule([a, b], rule.gap, rule.edge, to.sketchOf);
  const source: RuleSource = { kind: 'rule', rule: rule.id };
  if (asked.kind === 'cannot') {
    const points = [a, b].flatMap((body) => (body.kind === 'round' ? [body.point] : []));
    refuse(to, rule, points, whyNoGap(asked, rule.gap), asked.lacking);
    return;
  }
  const length = { length: asked.length, ...(rule.plusMinus === undefined ? {} : { plusMinus: rule.plusMinus }) };
  if (asked.kind === 'edge') {
    const points = pointsOf(to, rule, [asked.point]);
    if (!points) return;
    const values = [asked.normal.x, asked.normal.y, asked.offset];
    const made = to.builder.rule(source, RuleKind.onLine, points, values, rule.plusMinus ?? 0);
    to.builder.gapSides.set(made, 'outside');
  } else {
    const points = gapPoints(to, rule, asked);
    if (!points) return;
    const kind = asked.length === 0 ? RuleKind.samePlace : RuleKind.distance;
    const made = to.builder.rule(source, kind, points, [asked.length], rule.plusMinus ?? 0, 1);
    to.builder.gapSides.set(made, asked.inside ? 'inside' : 'outside');
  }
  to.builder.lengths.set(rule.id, length);
}

function gapPoints(to: Translation, rule: Rule, asked: GapRule & { kind: 'centres' }): number[] | undefined {
  if (typeof asked.from === 'string') return pointsOf(to, rule, [asked.point, asked.from]);
  const points = pointsOf(to, rule, [asked.point]);
  return points && [...points, to.builder.casePoint(asked.from)];
}

function whyNoGap(asked: GapRule & { kind: 'cannot' }, gap: number): NotKeptCause {
  if (asked.why !== 'noRoom') return { kind: asked.why };
  const most = gap - asked.lacking;
  return most >= 0 ? { kind: 'noRoom', most } : { kind: 'tooLarge', by: -most };
}

/** Network points of ids that must all be there and all be different; else the rule is refused. */
function pointsOf(to: Translation, rule: Rule, ids: readonly PointId[]): number[] | undefined {
  const indices = ids.map((id) => to.builder.indexOf.get(id));
  if (indices.includes(undefined)) {
    refuse(to, rule, [], { kind: 'missing', what: 'point' });
    return undefined;
  }
  const twice = ids.find((id, index) => ids.indexOf(id) !== index);
  if (twice !== undefined) {
    refuse(to, rule, [twice], { kind: 'twice', point: twice });
    return undefined;
  }
  return indices.map((index) => index ?? -1);
}

function refuse(to: Translation, rule: Rule, points: readonly PointId[], why: NotKeptCause, lacking = 0): void {
  to.builder.unusable.push({
    rule: rule.id,
    points: points.filter((id) => to.builder.indexOf.has(id)),
    why,
    lacking,
  });
}
