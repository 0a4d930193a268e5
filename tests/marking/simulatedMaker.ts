/**
 * A maker who knows nothing but the sheet of steps: he reads its sentences, sets dividers to the printed figures, scribes,
 * and picks the crossing that the words describe. What he struck is compared with the planting by the tests.
 */
import { crossingOfCircles, crossingOfLineAndCircle, crossingOfLines, type FreeLine } from '../files/makersTools.ts';

type At = readonly [number, number];

export interface BarePlate {
  /** What he can see of the plate: its straight edges, or its centre. */
  readonly edges: Readonly<Record<string, number>>;
  readonly centre?: At;
  /** Where he pricks the first point of a datum pair, and which way he scribes the base line, radians. */
  readonly first?: At;
  readonly base?: number;
}

type Scribed =
  | { readonly kind: 'circle'; readonly centre: At; readonly radius: number }
  | ({ readonly kind: 'line' } & FreeLine);

/** Adds an error to each setting as it is made; the exact maker adds none. */
export type Hand = (setting: number, isAngle: boolean) => number;
const steady: Hand = (setting) => setting;

/** Follows the text; gives the place of every label that was struck. */
export function followSteps(text: string, plate: BarePlate, hand: Hand = steady): Map<string, At> {
  const struck = new Map<string, At>();
  if (plate.centre && /Datum: the plate centre/.test(text)) struck.set('the plate centre', plate.centre);
  const maker = new Maker(struck, plate, hand);
  for (const block of text
    .trimEnd()
    .split(/\n\s*\n/)
    .slice(1)) {
    maker.step(block.split('\n').map((line) => line.trim()));
  }
  struck.delete('the plate centre');
  return struck;
}

class Maker {
  private readonly base: number;
  private origin: At | undefined;

  constructor(
    private readonly struck: Map<string, At>,
    private readonly plate: BarePlate,
    private readonly hand: Hand,
  ) {
    this.base = plate.base ?? 0;
    this.origin = plate.centre;
  }

  step(lines: readonly string[]): void {
    const head = /^\d+\. (.*?): (.*)$/.exec(lines[0] ?? '');
    if (!head) throw new Error(`no step in "${lines[0]}"`);
    const [, label = '', work = ''] = head;
    if (label === 'Plate centre' || work.startsWith('not settled')) return;
    const shares = /^shares the place of (.*): nothing to strike\.$/.exec(work);
    if (shares) {
      this.struck.set(label, this.at(shares[1] ?? ''));
      return;
    }
    if (work.startsWith('prick it where the plate allows')) {
      if (!this.plate.first) throw new Error('no place to prick the first point');
      this.origin = this.plate.first;
      this.struck.set(label, this.plate.first);
      return;
    }
    const along = /^scribe the base line from (.*) through .*, and on it strike the arc (\S+) from .*\.$/.exec(work);
    if (along) {
      const from = this.at(along[1] ?? '');
      const length = this.hand(Number(along[2]), false);
      this.struck.set(label, [from[0] + length * Math.cos(this.base), from[1] + length * Math.sin(this.base)]);
      return;
    }
    const take = lines.find((line) => line.startsWith('Take '))?.slice(5);
    this.struck.set(label, this.crossing(this.lociIn(work), take));
  }

  private lociIn(work: string): readonly [Scribed, Scribed] {
    const phrases = work
      .replace(/\.$/, '')
      .replace(/^(derived settings: |even spacing: |opposite: |lines at )/, '')
      .split(/ and (?=arc |line |\d)/);
    const [first, second] = phrases.map((phrase) => this.locus(phrase));
    if (!first || !second || phrases.length !== 2) throw new Error(`expected two settings in "${work}"`);
    return [first, second];
  }

  private locus(phrase: string): Scribed {
    const arc = /^arc (\S+) from (.*)$/.exec(phrase);
    if (arc) return { kind: 'circle', centre: this.at(arc[2] ?? ''), radius: this.hand(Number(arc[1]), false) };
    const through = /^line through (.*) and (.*)$/.exec(phrase);
    if (through) {
      const a = this.at(through[1] ?? '');
      const b = this.at(through[2] ?? '');
      return { kind: 'line', through: a, angle: Math.atan2(b[1] - a[1], b[0] - a[0]), ray: false };
    }
    const ray = /^line from (.*), turned (\S+)° (clockwise|anticlockwise) from (.*)$/.exec(phrase);
    if (ray) return this.ray(this.at(ray[1] ?? ''), Number(ray[2]), ray[3] === 'clockwise', ray[4] ?? '');
    return this.offset(phrase);
  }

  private ray(from: At, degrees: number, clockwise: boolean, reference: string): Scribed {
    const to = /^the line to (.*)$/.exec(reference);
    const target = to ? this.at(to[1] ?? '') : undefined;
    const zero = target ? Math.atan2(target[1] - from[1], target[0] - from[0]) : this.base;
    const turn = (this.hand(degrees, true) * Math.PI) / 180;
    return { kind: 'line', through: from, angle: zero + (clockwise ? -turn : turn), ray: true };
  }

  private offset(phrase: string): Scribed {
    const edge = /^(\S+) (from|outside) the (left|right|lower|upper) edge$/.exec(phrase);
    if (edge) {
      const [, length, way, side = ''] = edge;
      const inward = (side === 'left' || side === 'lower' ? 1 : -1) * (way === 'from' ? 1 : -1);
      const at = (this.plate.edges[side] ?? Number.NaN) + inward * this.hand(Number(length), false);
      return side === 'left' || side === 'right'
        ? { kind: 'line', through: [at, 0], angle: Math.PI / 2, ray: false }
        : { kind: 'line', through: [0, at], angle: 0, ray: false };
    }
    const across = /^(\S+) to the (left|right) of .*, along the base line$/.exec(phrase);
    const up = /^(\S+) (above|below) the base line$/.exec(phrase);
    if (!this.origin || !(across ?? up)) throw new Error(`cannot follow "${phrase}"`);
    const length = this.hand(Number((across ?? up)?.[1]), false);
    const sign = ['left', 'below'].includes((across ?? up)?.[2] ?? '') ? -1 : 1;
    const direction = across ? this.base : this.base + Math.PI / 2;
    const through: At = [
      this.origin[0] + sign * length * Math.cos(direction),
      this.origin[1] + sign * length * Math.sin(direction),
    ];
    return { kind: 'line', through, angle: direction + Math.PI / 2, ray: false };
  }

  private crossing([first, second]: readonly [Scribed, Scribed], take: string | undefined): At {
    const found = crossings(first, second);
    const [only, other] = found;
    if (!only) throw new Error('the settings do not meet');
    if (!other) return only;
    if (take === undefined) throw new Error('two crossings, and the sheet does not say which');
    const chosen = this.described(take, only, other) ? only : other;
    const rejected = chosen === only ? other : only;
    this.insist(take, chosen, rejected, first, second);
    return chosen;
  }

  private described(take: string, a: At, b: At): boolean {
    if (take.startsWith('the upper')) return a[1] > b[1];
    if (take.startsWith('the lower')) return a[1] < b[1];
    if (take.startsWith('the right-hand')) return a[0] > b[0];
    if (take.startsWith('the left-hand')) return a[0] < b[0];
    throw new Error(`which crossing is "${take}"?`);
  }

  /** Everything else that is said of the crossing must be true as well, and false of the other one. */
  private insist(take: string, chosen: At, rejected: At, first: Scribed, second: Scribed): void {
    const side = /(left|right) of the line from (.*?) to (.*?)(, nearer|\.$)/.exec(take);
    if (side && first.kind === 'circle' && second.kind === 'circle') {
      const a = this.at(side[2] ?? '');
      const b = this.at(side[3] ?? '');
      const turn = (p: At) => (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]);
      const isLeft = turn(chosen) > 0;
      if (isLeft !== (side[1] === 'left') || turn(chosen) * turn(rejected) > 0) throw new Error(`false: "${take}"`);
    }
    const near = /nearer (.*)\.$/.exec(take);
    if (near) {
      const mark = this.at(near[1] ?? '');
      const to = (p: At) => Math.hypot(p[0] - mark[0], p[1] - mark[1]);
      if (to(chosen) >= to(rejected)) throw new Error(`false: "${take}"`);
    }
  }

  private at(label: string): At {
    const found = this.struck.get(label);
    if (!found) throw new Error(`"${label}" is not on the metal yet`);
    return found;
  }
}

function crossings(first: Scribed, second: Scribed): readonly At[] {
  if (first.kind === 'circle' && second.kind === 'circle') return crossingOfCircles(first, second);
  if (first.kind === 'line' && second.kind === 'line') return crossingOfLines(first, second);
  if (first.kind === 'line' && second.kind === 'circle') return crossingOfLineAndCircle(first, second);
  if (first.kind === 'circle' && second.kind === 'line') return crossingOfLineAndCircle(second, first);
  return [];
}
