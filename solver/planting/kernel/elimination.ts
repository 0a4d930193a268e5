/**
 * Elimination order and fill of a symmetric pattern: minimum degree on a quotient graph.
 *
 * Eliminating a node joins its neighbours. Instead of writing those joins out, the eliminated node stays as an
 * *element* that stands for its list of neighbours, and absorbs the elements it touched; so the lists never grow beyond
 * the room of the original graph. (The idea is in A. George and J. W. H. Liu, "The evolution of the minimum degree
 * ordering algorithm", 1989.) The list of an element is the column of the factor, so one pass gives order and fill.
 * Array kernel: indices are below the counts given, hence the `!`.
 */

/** Order of elimination and the columns of the factor, in positions of that order. */
export interface Elimination {
  readonly count: number;
  /** Node at each position, and position of each node. */
  readonly nodeAt: Int32Array;
  readonly positionOf: Int32Array;
  /** Rows (positions, ascending) of column k: `rows[start[k]] … rows[start[k + 1] - 1]`, the diagonal left out. */
  readonly start: Int32Array;
  readonly rows: Int32Array;
}

/** Neighbour lists: those of node i are `list[start[i]] … list[start[i + 1] - 1]`, each neighbour once. */
export interface Neighbours {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** The graph of what is left while unknowns are taken out one after another. */
class Quotient {
  readonly nodes: Int32Array;
  readonly nodeCount: Int32Array;
  /** Elements of a node grow from the far end of its room. */
  readonly elementCount: Int32Array;
  readonly start: Int32Array;
  readonly mark: Int32Array;
  stamp = 0;
  /** Lists of elements, one after another. */
  pool: Int32Array;
  readonly poolStart: Int32Array;
  readonly poolEnd: Int32Array;
  poolUsed = 0;
  readonly gone: Uint8Array;
  readonly absorbed: Uint8Array;

  constructor(count: number, neighbours: Neighbours) {
    this.start = neighbours.start;
    this.nodes = neighbours.list.slice();
    this.nodeCount = new Int32Array(count);
    for (let i = 0; i < count; i++) this.nodeCount[i] = neighbours.start[i + 1]! - neighbours.start[i]!;
    this.elementCount = new Int32Array(count);
    this.mark = new Int32Array(count);
    this.pool = new Int32Array(8 * count + 64);
    this.poolStart = new Int32Array(count);
    this.poolEnd = new Int32Array(count);
    this.gone = new Uint8Array(count);
    this.absorbed = new Uint8Array(count);
  }

  /** Eliminates a node: writes its neighbours to the pool as its element. */
  eliminate(v: number, count: number): void {
    if (this.poolUsed + count > this.pool.length) {
      const larger = new Int32Array(2 * this.pool.length + count);
      larger.set(this.pool);
      this.pool = larger;
    }
    const stamp = ++this.stamp;
    const { mark, nodes, pool, gone } = this;
    mark[v] = stamp;
    let end = this.poolUsed;
    const from = this.start[v]!;
    for (let k = from; k < from + this.nodeCount[v]!; k++) {
      const u = nodes[k]!;
      if (gone[u] || mark[u] === stamp) continue;
      mark[u] = stamp;
      pool[end++] = u;
    }
    const to = this.start[v + 1]!;
    for (let k = to - this.elementCount[v]!; k < to; k++) {
      const e = nodes[k]!;
      this.absorbed[e] = 1;
      for (let j = this.poolStart[e]!; j < this.poolEnd[e]!; j++) {
        const u = pool[j]!;
        if (gone[u] || mark[u] === stamp) continue;
        mark[u] = stamp;
        pool[end++] = u;
      }
    }
    gone[v] = 1;
    this.poolStart[v] = this.poolUsed;
    this.poolEnd[v] = end;
    this.poolUsed = end;
  }

  /** Rewrites a neighbour's lists after `v` became an element (marks of that elimination must still stand). */
  shorten(u: number, v: number): void {
    const { nodes, mark, stamp, gone, absorbed } = this;
    const from = this.start[u]!;
    const to = this.start[u + 1]!;
    let kept = from;
    for (let k = from; k < from + this.nodeCount[u]!; k++) {
      const w = nodes[k]!;
      if (!gone[w] && mark[w] !== stamp) nodes[kept++] = w;
    }
    this.nodeCount[u] = kept - from;
    let at = to;
    for (let k = to - 1; k >= to - this.elementCount[u]!; k--) if (!absorbed[nodes[k]!]) nodes[--at] = nodes[k]!;
    nodes[--at] = v;
    this.elementCount[u] = to - at;
  }

  degree(u: number): number {
    const { nodes, pool, gone, mark } = this;
    const stamp = ++this.stamp;
    mark[u] = stamp;
    let degree = this.nodeCount[u]!;
    for (let k = this.start[u]!; k < this.start[u]! + degree; k++) mark[nodes[k]!] = stamp;
    const to = this.start[u + 1]!;
    for (let k = to - this.elementCount[u]!; k < to; k++) {
      const e = nodes[k]!;
      for (let j = this.poolStart[e]!; j < this.poolEnd[e]!; j++) {
        const w = pool[j]!;
        if (gone[w] || mark[w] === stamp) continue;
        mark[w] = stamp;
        degree++;
      }
    }
    return degree;
  }
}

/** Finds an order of small fill for a pattern with the given neighbours. Ties go to the lower index. */
export function eliminationOf(count: number, neighbours: Neighbours): Elimination {
  const graph = new Quotient(count, neighbours);
  const nodeAt = new Int32Array(count);
  const positionOf = new Int32Array(count);
  // Nodes by degree in doubly linked lists; `head[d]` is the first of degree d.
  const head = new Int32Array(count + 1).fill(-1);
  const next = new Int32Array(count).fill(-1);
  const previous = new Int32Array(count).fill(-1);
  const degree = new Int32Array(count);
  let least = count;
  for (let i = count - 1; i >= 0; i--) {
    const d = graph.nodeCount[i]!;
    degree[i] = d;
    const h = head[d]!;
    next[i] = h;
    if (h >= 0) previous[h] = i;
    head[d] = i;
    if (d < least) least = d;
  }
  for (let position = 0; position < count; position++) {
    while (head[least]! < 0) least++;
    const v = head[least]!;
    head[least] = next[v]!;
    if (next[v]! >= 0) previous[next[v]!] = -1;
    nodeAt[position] = v;
    positionOf[v] = position;
    graph.eliminate(v, count);
    const from = graph.poolStart[v]!;
    const to = graph.poolEnd[v]!;
    for (let k = from; k < to; k++) graph.shorten(graph.pool[k]!, v);
    for (let k = from; k < to; k++) {
      const u = graph.pool[k]!;
      const old = degree[u]!;
      const p = previous[u]!;
      const n = next[u]!;
      if (p >= 0) next[p] = n;
      else head[old] = n;
      if (n >= 0) previous[n] = p;
      const d = graph.degree(u);
      degree[u] = d;
      const h = head[d]!;
      next[u] = h;
      previous[u] = -1;
      if (h >= 0) previous[h] = u;
      head[d] = u;
      if (d < least) least = d;
    }
  }
  return columnsOf(count, graph, nodeAt, positionOf);
}

/** The columns in positions, each sorted. */
function columnsOf(count: number, graph: Quotient, nodeAt: Int32Array, positionOf: Int32Array): Elimination {
  const start = new Int32Array(count + 1);
  const rows = new Int32Array(graph.poolUsed);
  let at = 0;
  for (let position = 0; position < count; position++) {
    const v = nodeAt[position]!;
    const first = at;
    for (let k = graph.poolStart[v]!; k < graph.poolEnd[v]!; k++) {
      const row = positionOf[graph.pool[k]!]!;
      let slot = at++;
      for (; slot > first && rows[slot - 1]! > row; slot--) rows[slot] = rows[slot - 1]!;
      rows[slot] = row;
    }
    start[position + 1] = at;
  }
  return { count, nodeAt, positionOf, start, rows };
}
