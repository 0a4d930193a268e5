/**
 * The frame that the movements of the catalogue stand in, at any size, turned, mirrored, lifted and in another unit.
 *
 * A movement of the catalogue is written once, in plain millimetres; what varies it is applied to every number as it is
 * written, so that no case knows of it.
 */

/** How a movement is varied. */
export interface Variation {
  /** Every length is multiplied by this. */
  readonly size: number;
  /** Turned about the origin by so much, radians, after it was mirrored. */
  readonly turn: number;
  readonly isMirrored: boolean;
  /** Every height is raised by so much, mm. */
  readonly lift: number;
  readonly unit: 'mm' | 'inch';
  /** Lists in another order: a number from 0 to 1 for each item. */
  readonly order: () => number;
}

/** As it is written down. */
export const PLAIN: Variation = { size: 1, turn: 0, isMirrored: false, lift: 0, unit: 'mm', order: () => 0 };

type Parts = Readonly<Record<string, unknown>>;

/** Writes parts of movements under a variation. */
export class Writer {
  private readonly by: Variation;

  constructor(by: Variation) {
    this.by = by;
  }

  /** A length. */
  l(mm: number): number {
    return mm * this.by.size;
  }

  /** A height. */
  z(mm: number): number {
    return mm * this.by.size + this.by.lift;
  }

  /** Two heights. */
  levels(from: number, to: number): { from: number; to: number } {
    return { from: this.z(from), to: this.z(to) };
  }

  /** A place. */
  at(x: number, y: number): [number, number] {
    const { size, turn, isMirrored } = this.by;
    const [u, v] = [(isMirrored ? -x : x) * size, y * size];
    return [u * Math.cos(turn) - v * Math.sin(turn), u * Math.sin(turn) + v * Math.cos(turn)];
  }

  circle(x: number, y: number, radius: number): object {
    return { kind: 'circle', centre: this.at(x, y), radius: this.l(radius) };
  }

  /** A rectangle about the origin, by half its width and half its height; mirrored, its corners go the other way round. */
  rectangle(w: number, h: number): object {
    const corners = [this.at(-w, -h), this.at(w, -h), this.at(w, h), this.at(-w, h)];
    if (this.by.isMirrored) corners.reverse();
    return { kind: 'path', vertices: corners.map(([x, y]) => ({ x, y })) };
  }

  plate(id: string, from: number, to: number, outline = this.rectangle(60, 50)): object {
    return { id, name: id, outline, levels: this.levels(from, to) };
  }

  /** A running hole on a pivot in a plate. */
  bearing(plate: string, pivot = 2, more: object = {}): object {
    return { plate, bore: this.l(pivot + 0.03), pivot: this.l(pivot), length: this.l(3), ...more };
  }

  /** A bush in a pipe at a height, on what is inside it. */
  bush(at: number, pivot: number, more: object = {}): object {
    return {
      kind: 'bush',
      at: this.z(at),
      bore: this.l(pivot + 0.03),
      pivot: this.l(pivot),
      length: this.l(3),
      ...more,
    };
  }

  /** An arbor of 3 between the two plates, with end shake. */
  arbor(id: string, x: number, y: number, more: object = {}): Parts {
    return {
      id,
      name: id,
      at: this.at(x, y),
      diameter: this.l(3),
      bearings: [this.bearing('back'), this.bearing('front')],
      endShake: this.l(0.2),
      ...more,
    };
  }

  /** An involute wheel of module 1. */
  wheel(id: string, arbor: string, teeth: number, level: number, more: object = {}): object {
    const size = { module: this.by.size };
    return { id, name: id, arbor, teeth, size, form: 'involute', level: this.z(level), thickness: this.l(2), ...more };
  }

  /** A pillar of 8, screwed to both plates. */
  post(id: string, x: number, y: number, more: object = {}): Parts {
    return { id, name: id, at: this.at(x, y), diameter: this.l(8), hole: this.l(4), ...more };
  }

  pillars(more: object = {}): Parts[] {
    return [
      this.post('p1', 50, 40, more),
      this.post('p2', -50, 40, more),
      this.post('p3', -50, -40, more),
      this.post('p4', 50, -40, more),
    ];
  }

  /** A movement between two plates 40 apart on four pillars; every point is held where it is written. */
  movement(parts: Parts): object {
    const { unit } = this.by;
    const list = (name: string): Parts[] => (parts[name] as Parts[] | undefined) ?? [];
    const posts = (parts['posts'] as Parts[] | undefined) ?? this.pillars();
    const points = [...list('arbors').filter((each) => each['ridesOn'] === undefined), ...posts, ...list('marks')];
    const held = points.map(({ id, at }) => ({ id: `held-${String(id)}`, kind: 'held', point: id, at }));
    return {
      display: { unit, decimals: 3 },
      limits: { radialGap: this.l(0.5), heightGap: this.l(0.3), wallGap: this.l(0.5) },
      stackTolerance: { piece: this.l(0.02), plates: this.l(0.05) },
      plates: this.shuffled([this.plate('back', -3, 0), this.plate('front', 40, 43)]),
      ...Object.fromEntries(
        Object.entries(parts).map(([name, value]) => [name, Array.isArray(value) ? this.shuffled(value) : value]),
      ),
      posts: this.shuffled(posts),
      rules: [...held, ...list('rules')],
    };
  }

  private shuffled(items: readonly unknown[]): unknown[] {
    return items
      .map((item) => ({ item, key: this.by.order() }))
      .sort((a, b) => a.key - b.key)
      .map(({ item }) => item);
  }
}

/** A movement of the catalogue: what it is, and how it is written. */
export interface Case {
  readonly name: string;
  readonly parts: (w: Writer) => object;
}
