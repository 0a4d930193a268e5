/** How one kind of rule is spoken of. Each kind is one file here; `ruleKinds.ts` joins them. */
import { arborOfWheel } from '../../marking/index.ts';
import type { PointId } from '../../movement/ids.ts';
import type { KindOfRule, Movement, RuleOf } from '../../movement/schema.ts';

/** What a maker calls rules of a kind, alone and in a sentence. */
export interface RuleKindInWords<K extends KindOfRule> {
  /** As a heading and in a table: "depth". */
  readonly heading: string;
  /** As it is asked for: "a depth". */
  readonly asked: string;
  /** What its length is called where one that would reach is told; where absent, a radius. */
  readonly noun?: string;
  /** One rule of the kind, without its own name: "the depth of Third and Escape". */
  readonly said: (rule: RuleOf<K>, name: (id: string) => string, movement: Movement) => string;
  /** The same where several rules would be called so: "the depth of Third wheel and Escape pinion". */
  readonly finer?: (rule: RuleOf<K>, name: (id: string) => string) => string;
  /** What follows the heading on the slip of one of its points: "with Escape". */
  readonly seen: (rule: RuleOf<K>, from: PointId, name: (id: string) => string, movement: Movement) => string;
  /** The heading before `seen`, where it is another. */
  readonly short?: string;
}

/** The one of two that is not the point. */
export const otherThan = <Id extends string>(ids: readonly [Id, Id], point: string): Id =>
  ids[0] === point ? ids[1] : ids[0];

/** A wheel stands for its arbor. */
export const standsOn = (movement: Movement, part: string, point: PointId): boolean =>
  part === point || arborOfWheel(movement, part) === point;
