/**
 * Random movements built from a known placement: every rule is measured from the places, so the places are an answer.
 *
 * Each new point gets exactly what settles it from points before it, crossing at no flat angle, so nothing is spare and
 * every rule takes away exactly the freedom of its kind.
 */
import type { Movement } from '../../solver/movement/schema.ts';
import { arbor, buildMovement, clockWheel, held, mark, type RuleInput } from './buildMovement.ts';

export type XY = readonly [number, number];

export interface Known {
  readonly movement: Movement;
  readonly places: ReadonlyMap<string, XY>;
  /** Freedom that each rule takes away. */
  readonly takes: ReadonlyMap<string, number>;
}

/** A small generator of numbers in [0, 1): mulberry32, public domain. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const DEGREES = 180 / Math.PI;
/** Sine of the flattest crossing that is built, 25°: the recovered digits depend on it. */
const LEAST_SINE = Math.sin((25 * Math.PI) / 180);
/** Sketches are off by up to this, mm, and the other crossing is at least four times as far. */
const SKETCH_ERROR = 1;

interface Locus {
  readonly rule: RuleInput;
  /** Direction across the locus at the point. */
  readonly normal: XY;
}

/** Builds a movement of `count` points; the same seed gives the same movement. */
export function randomMovement(seed: number, count: number): Known {
  const random = randomFrom(seed);
  const builder = new Builder(random);
  builder.ground();
  while (builder.places.size < count) builder.next();
  return builder.finish();
}

class Builder {
  readonly places = new Map<string, XY>();
  readonly takes = new Map<string, number>();
  readonly #rules: RuleInput[] = [];
  readonly #arbors: ReturnType<typeof arbor>[] = [];
  readonly #marks: ReturnType<typeof mark>[] = [];
  readonly #wheels: ReturnType<typeof clockWheel>[] = [];
  /** Is the next point a mark (radius 0, no wheels) instead of an arbor? */
  #isMark = false;
  readonly #random: () => number;

  constructor(random: () => number) {
    this.#random = random;
  }

  ground(): void {
    const a = this.#add(this.#place());
    this.#rule(held(this.#ruleId(), a, ...this.#at(a)), 2);
    const b = this.#add(this.#place());
    this.#rule(held(this.#ruleId(), b, ...this.#at(b)), 2);
  }

  next(): void {
    const kind = this.#random();
    this.#isMark = this.#random() < 0.2;
    if (kind < 0.08) this.#opposite();
    else if (kind < 0.14) this.#pipe();
    else if (kind < 0.2) this.#ring();
    else this.#crossing();
  }

  finish(): Known {
    const movement = buildMovement({
      arbors: this.#arbors,
      marks: this.#marks,
      wheels: this.#wheels,
      rules: this.#rules,
    });
    return { movement, places: this.places, takes: this.takes };
  }

  /** A point by two loci that cross well. */
  #crossing(): void {
    for (let tries = 0; tries < 200; tries++) {
      const at = this.#place();
      const id = `p${this.places.size}`;
      const [first, second] = [this.#locus(id, at), this.#locus(id, at)];
      if (!first || !second) continue;
      const sine = Math.abs(first.normal[0] * second.normal[1] - first.normal[1] * second.normal[0]);
      if (sine < LEAST_SINE) continue;
      this.#add(at);
      this.#rule({ ...first.rule, id: this.#ruleId() }, 1);
      this.#rule({ ...second.rule, id: this.#ruleId() }, 1);
      return;
    }
    throw new Error('no crossing found: the generator is wrong');
  }

  #locus(id: string, at: XY): Locus | undefined {
    const [a, , c] = this.#three();
    const [ax, ay] = this.#at(a);
    const length = Math.hypot(at[0] - ax, at[1] - ay);
    // Two crossings of a circle are well apart when the radius is large beside the sketch's error.
    if (length < 8) return undefined;
    const along: XY = [(at[0] - ax) / length, (at[1] - ay) / length];
    const across: XY = [-along[1], along[0]];
    const kind = Math.floor(this.#random() * 7);
    switch (kind) {
      case 0:
        return { rule: { kind: 'distance', id: '', points: [a, id], length }, normal: along };
      case 1:
        return { rule: { kind: 'radius', id: '', point: id, centre: a, length }, normal: along };
      case 2:
        return {
          rule: { kind: 'bearing', id: '', point: id, centre: a, angle: angleTo(this.#at(a), at) },
          normal: across,
        };
      case 3: {
        if (!this.#areApart(a, c)) return undefined;
        const angle = angleTo(this.#at(a), at) - angleTo(this.#at(a), this.#at(c));
        return { rule: { kind: 'bearing', id: '', point: id, centre: a, reference: c, angle }, normal: across };
      }
      case 4: {
        const [own, other] = [this.#isMark ? 0 : 1, this.#arbors.some((each) => each.id === a) ? 1 : 0];
        const gap = length - own - other; // arbors have the default radius of 1
        return { rule: { kind: 'clearBy', id: '', parts: [a, id], gap }, normal: along };
      }
      case 5: {
        return this.#depth(id, a, length, along);
      }
      default:
        return { rule: { kind: 'distance', id: '', points: [id, a], length }, normal: along };
    }
  }

  /** A depth that is held at the distance that is there; its wheels are made for it. */
  #depth(id: string, a: string, length: number, normal: XY): Locus | undefined {
    if (this.#isMark || !this.#arbors.some((each) => each.id === a)) return undefined;
    const [w, v] = [`w${this.#wheels.length}`, `w${this.#wheels.length + 1}`];
    const module = 0.5;
    this.#wheels.push(clockWheel(w, a, 60, module), clockWheel(v, id, 12, module));
    return { rule: { kind: 'depth', id: '', wheels: [w, v], use: 'held', held: length }, normal };
  }

  #opposite(): void {
    const [of, centre] = this.#three();
    if (!this.#areApart(of, centre)) return;
    const [ox, oy] = this.#at(of);
    const [cx, cy] = this.#at(centre);
    const id = this.#add([2 * cx - ox, 2 * cy - oy]);
    this.#rule({ kind: 'opposite', id: this.#ruleId(), point: id, centre, of }, 2);
  }

  #pipe(): void {
    const [on] = this.#three();
    const carrier = this.#arbors.find((each) => each.id === on);
    if (!carrier) return;
    const id = this.#add(this.#at(on));
    const pipe = this.#arbors.find((each) => each.id === id);
    if (pipe) pipe.ridesOn = on;
    else this.#rule({ kind: 'samePlace', id: this.#ruleId(), points: [id, on] }, 2);
  }

  #ring(): void {
    const [first, centre] = this.#three();
    if (!this.#areApart(first, centre)) return;
    const count = 2 + Math.floor(this.#random() * 3);
    const [fx, fy] = this.#at(first);
    const [cx, cy] = this.#at(centre);
    const points = [first];
    for (let k = 1; k < count; k++) {
      const angle = (2 * Math.PI * k) / count;
      const [dx, dy] = [fx - cx, fy - cy];
      points.push(
        this.#add([cx + Math.cos(angle) * dx - Math.sin(angle) * dy, cy + Math.sin(angle) * dx + Math.cos(angle) * dy]),
      );
    }
    this.#rule({ kind: 'evenSpacing', id: this.#ruleId(), points, centre }, 2 * (count - 1));
  }

  /** An arbor, or now and then a mark, sketched a little off. */
  #add(at: XY): string {
    const id = `p${this.places.size}`;
    this.places.set(id, at);
    const sketch: XY = [at[0] + (this.#random() - 0.5) * SKETCH_ERROR, at[1] + (this.#random() - 0.5) * SKETCH_ERROR];
    if (this.#isMark) this.#marks.push(mark(id, ...sketch));
    else this.#arbors.push(arbor(id, ...sketch));
    return id;
  }

  /** Three points: mostly recent ones, so that chains grow long. */
  #three(): [string, string, string] {
    const ids = [...this.places.keys()];
    const pick = (): string => ids[Math.floor(ids.length * (1 - this.#random() ** 2))] ?? ids[0] ?? '';
    return [pick(), pick(), pick()];
  }

  /** A place at least 6 mm from all others. */
  #place(): XY {
    const reach = 30 + 4 * this.places.size;
    for (;;) {
      const at: XY = [(this.#random() - 0.5) * 2 * reach, (this.#random() - 0.5) * 2 * reach];
      if ([...this.places.values()].every(([x, y]) => Math.hypot(x - at[0], y - at[1]) > 6)) return at;
    }
  }

  #areApart(a: string, b: string): boolean {
    const [[ax, ay], [bx, by]] = [this.#at(a), this.#at(b)];
    return Math.hypot(bx - ax, by - ay) > 3;
  }

  #at(id: string): XY {
    return this.places.get(id) ?? [0, 0];
  }

  #ruleId(): string {
    return `r${this.#rules.length}`;
  }

  #rule(rule: RuleInput, takes: number): void {
    this.#rules.push(rule);
    this.takes.set(rule.id, takes);
  }
}

function angleTo([ax, ay]: XY, [bx, by]: XY): number {
  return Math.atan2(by - ay, bx - ax) * DEGREES;
}
