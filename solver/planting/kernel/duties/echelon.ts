/**
 * Rows taken one by one into echelon form: does a row add to those before it?
 *
 * Columns stand in an order in which each unknown comes after those that it is built from. A row is cleared from its last
 * column downwards: the first column that no earlier row leads becomes its own lead, and a row that is cleared away
 * altogether depends on the earlier ones. Rows of a movement that is built point by point lead at once, without any
 * work; only what is too much runs down through what it hangs on.
 */

/** What is left of a row, against the largest number met while it was cleared: below this nothing is left. */
const CLEARED = 1e-9;
/** Between `CLEARED` and this the numbers do not say: other places are asked. */
const DOUBTFUL = 1e-6;

export type RowOutcome = 'adds' | 'depends' | 'doubtful';

/** A heap of column positions, the last one first, each once. */
class LastFirst {
  private readonly heap: number[] = [];
  private readonly present: Uint8Array;

  constructor(columns: number) {
    this.present = new Uint8Array(columns);
  }

  add(position: number): void {
    if (this.present[position]) return;
    this.present[position] = 1;
    const { heap } = this;
    let at = heap.push(position) - 1;
    while (at > 0) {
      const parent = (at - 1) >> 1;
      if (heap[parent]! >= position) break;
      heap[at] = heap[parent]!;
      at = parent;
    }
    heap[at] = position;
  }

  /** The last position, or -1. */
  take(): number {
    const { heap } = this;
    const top = heap[0];
    if (top === undefined) return -1;
    const last = heap.pop()!;
    this.present[top] = 0;
    if (heap.length === 0) return top;
    let at = 0;
    for (;;) {
      let child = 2 * at + 1;
      if (child >= heap.length) break;
      if (child + 1 < heap.length && heap[child + 1]! > heap[child]!) child++;
      if (heap[child]! <= last) break;
      heap[at] = heap[child]!;
      at = child;
    }
    heap[at] = last;
    return top;
  }

  clear(): void {
    for (const position of this.heap) this.present[position] = 0;
    this.heap.length = 0;
  }
}

/** A row that is kept, scaled so that it leads with 1: its entries at smaller positions. */
interface Lead {
  readonly positions: Int32Array;
  readonly values: Float64Array;
}

/** Rows in echelon form over `columns` positions; positions are compared by size, the greatest leads. */
export class Echelon {
  private readonly leads: (Lead | undefined)[];
  private readonly row: Float64Array;
  private readonly queue: LastFirst;

  constructor(columns: number) {
    this.leads = new Array(columns);
    this.row = new Float64Array(columns);
    this.queue = new LastFirst(columns);
  }

  /**
   * Takes a row in.
   *
   * @param positions where it has entries; a position may come twice and is then summed
   * @returns whether it adds to the rows before it; a row that does not add, or is doubtful, is not kept
   */
  take(positions: readonly number[], values: readonly number[]): RowOutcome {
    const { row, queue, leads } = this;
    for (let k = 0; k < positions.length; k++) {
      row[positions[k]!]! += values[k]!;
      queue.add(positions[k]!);
    }
    let largest = 0;
    for (const position of positions) largest = Math.max(largest, Math.abs(row[position]!));
    let left = 0;
    for (let at = queue.take(); at >= 0; at = queue.take()) {
      const value = row[at]!;
      const lead = leads[at];
      if (!lead) {
        const size = Math.abs(value);
        if (size > DOUBTFUL * largest) {
          this.keep(at);
          return 'adds';
        }
        left = Math.max(left, size);
        row[at] = 0;
        continue;
      }
      row[at] = 0;
      if (value === 0) continue;
      largest = Math.max(largest, this.subtract(lead, value));
    }
    return left > CLEARED * largest ? 'doubtful' : 'depends';
  }

  /** Takes `factor` times a leading row away; returns the largest number that came of it. */
  private subtract({ positions, values }: Lead, factor: number): number {
    let largest = 0;
    for (let k = 0; k < positions.length; k++) {
      const position = positions[k]!;
      this.row[position]! -= factor * values[k]!;
      largest = Math.max(largest, Math.abs(this.row[position]!));
      this.queue.add(position);
    }
    return largest;
  }

  /** Keeps what is left of the row, scaled so that it leads with 1; its other entries stand at smaller positions. */
  private keep(at: number): void {
    const scale = 1 / this.row[at]!;
    this.row[at] = 0;
    const positions: number[] = [];
    const values: number[] = [];
    for (let position = this.queue.take(); position >= 0; position = this.queue.take()) {
      const value = this.row[position]!;
      this.row[position] = 0;
      if (value === 0) continue;
      positions.push(position);
      values.push(value * scale);
    }
    this.leads[at] = { positions: Int32Array.from(positions), values: Float64Array.from(values) };
  }
}
