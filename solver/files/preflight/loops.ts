/** Closed loops, open ends, small gaps and doubles among read pieces. */
import type { ReadPoint, ReadShape } from './readShapes.ts';

/** How the pieces of a drawing hang together. */
export interface Joints {
  readonly closedLoops: number;
  readonly openEnds: number;
  /** Open ends that nearly meet, mm apart. */
  readonly gaps: readonly number[];
  /** Pieces drawn twice. */
  readonly doubles: number;
}

/** Ends nearer than this are joined, mm: below any machine's resolution. */
const JOINED = 1e-4;
/** Open ends nearer than this were meant to meet, mm: about the width of a cut. */
const NEARLY = 0.2;

/** How the pieces of the cut layers hang together. Pieces are compared within a layer; a circle is a loop of its own. */
export function jointsOf(shapes: readonly ReadShape[]): Joints {
  const pieces = shapes.filter((shape) => shape.kind !== 'circle');
  const nodes = new Nodes();
  for (const piece of pieces) nodes.join(piece.layer, piece.from, piece.to);
  const keys = shapes.map(keyOf);
  const circles = new Set(keys.filter((key) => key.startsWith('circle'))).size;
  const { loops, open } = nodes.count();
  return {
    closedLoops: loops + circles,
    openEnds: open.length,
    gaps: gapsBetween(open),
    doubles: keys.length - new Set(keys).size,
  };
}

const rounded = (value: number): number => Math.round(value / JOINED);
const spot = ([x, y]: ReadPoint): string => `${rounded(x)},${rounded(y)}`;

function keyOf(shape: ReadShape): string {
  if (shape.kind === 'circle') return `circle ${shape.layer} ${spot(shape.centre)} ${rounded(shape.radius)}`;
  const ends = [spot(shape.from), spot(shape.to)].sort().join(' ');
  if (shape.kind === 'line') return `line ${shape.layer} ${ends}`;
  const middle = Math.atan2(shape.from[1] - shape.centre[1], shape.from[0] - shape.centre[0]) + shape.sweep / 2;
  const top: ReadPoint = [
    shape.centre[0] + shape.radius * Math.cos(middle),
    shape.centre[1] + shape.radius * Math.sin(middle),
  ];
  return `arc ${shape.layer} ${ends} ${spot(top)}`;
}

/** End points, joined within the tolerance, with the number of pieces that end there. */
class Nodes {
  private readonly cells = new Map<string, number[]>();
  private readonly at: ReadPoint[] = [];
  private readonly degree: number[] = [];
  private readonly leader: number[] = [];

  join(layer: string, from: ReadPoint, to: ReadPoint): void {
    const a = this.node(layer, from);
    const b = this.node(layer, to);
    this.degree[a] = (this.degree[a] ?? 0) + 1;
    this.degree[b] = (this.degree[b] ?? 0) + 1;
    this.leader[this.find(a)] = this.find(b);
  }

  count(): { loops: number; open: readonly ReadPoint[] } {
    const closed = new Map<number, boolean>();
    const open: ReadPoint[] = [];
    this.degree.forEach((degree, index) => {
      const root = this.find(index);
      closed.set(root, (closed.get(root) ?? true) && degree === 2);
      const place = this.at[index];
      if (degree === 1 && place) open.push(place);
    });
    return { loops: [...closed.values()].filter(Boolean).length, open };
  }

  private find(index: number): number {
    let root = index;
    while (this.leader[root] !== undefined && this.leader[root] !== root) root = this.leader[root] ?? root;
    this.leader[index] = root;
    return root;
  }

  private node(layer: string, point: ReadPoint): number {
    const cellX = Math.floor(point[0] / JOINED);
    const cellY = Math.floor(point[1] / JOINED);
    for (let dx = -1; dx <= 1; dx++) {
      for (let dy = -1; dy <= 1; dy++) {
        for (const index of this.cells.get(`${layer} ${cellX + dx},${cellY + dy}`) ?? []) {
          const other = this.at[index];
          if (other && Math.hypot(other[0] - point[0], other[1] - point[1]) <= JOINED) return index;
        }
      }
    }
    const index = this.at.length;
    const key = `${layer} ${cellX},${cellY}`;
    this.at.push(point);
    this.degree.push(0);
    this.leader.push(index);
    this.cells.set(key, [...(this.cells.get(key) ?? []), index]);
    return index;
  }
}

function gapsBetween(open: readonly ReadPoint[]): readonly number[] {
  const gaps: number[] = [];
  open.forEach((a, index) => {
    for (const b of open.slice(index + 1)) {
      const gap = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if (gap <= NEARLY) gaps.push(gap);
    }
  });
  return gaps.sort((a, b) => a - b);
}
