/**
 * Tabulated families of clock teeth, × module.
 *
 * The BS 978 family is a published table of a cutter maker. One figure of it is wrong as printed: the depth
 * of cut for 10 leaves (2.755) repeats the 8-leaf figure, while 0.805 + 2.05 = 2.855. It is kept as printed, and
 * nothing is computed from `depthOfCut`: sizes use addendum and dedendum.
 */

/** A row for wheels of any count. */
export interface WheelRow {
  readonly name: string;
  /** Blank diameter = (teeth + this) × module; root diameter = (teeth − this) × module. */
  readonly blankOver: number;
  readonly rootUnder: number;
  readonly addendum: number;
  readonly dedendum: number;
  readonly thickness: number;
  readonly depthOfCut: number;
  /** Radius of the arcs that form the face. */
  readonly tipRadius: number;
}

/** A row for pinions of one count of leaves. */
export interface LeafRow {
  readonly leaves: number;
  readonly blank: number;
  readonly root: number;
  readonly addendum: number;
  readonly dedendum: number;
  readonly thickness: number;
  readonly depthOfCut: number;
  readonly tipRadius: number;
}

const wheelRow = (name: string, ...n: [number, number, number, number, number, number, number]): WheelRow => ({
  name,
  blankOver: n[0],
  rootUnder: n[1],
  addendum: n[2],
  dedendum: n[3],
  thickness: n[4],
  depthOfCut: n[5],
  tipRadius: n[6],
});

const leafRow = (leaves: number, ...n: [number, number, number, number, number, number, number]): LeafRow => ({
  leaves,
  blank: n[0],
  root: n[1],
  addendum: n[2],
  dedendum: n[3],
  thickness: n[4],
  depthOfCut: n[5],
  tipRadius: n[6],
});

export const CUTTER_WHEELS = {
  fine: wheelRow('BS 978 fine', 2.76, 3.14, 1.38, 1.57, 1.57, 2.95, 1.93),
  deep: wheelRow('BS 978 deep', 2.76, 4, 1.38, 2, 1.57, 3.38, 1.93),
  short: wheelRow('BS 978 short', 2.76, 2.14, 1.38, 1.07, 1.57, 2.45, 1.93),
  roundBottom: wheelRow('BS 978 round bottom', 2.5, 3.5, 1.25, 1.75, 1.41, 3, 2),
} as const;

export const CUTTER_LEAVES: readonly LeafRow[] = [
  leafRow(6, 7.71, 2.84, 0.855, 1.58, 1.05, 2.435, 1.05),
  leafRow(7, 8.71, 3.3, 0.855, 1.85, 1.05, 2.705, 1.05),
  leafRow(8, 9.71, 4.2, 0.855, 1.9, 1.05, 2.755, 1.05),
  leafRow(10, 11.61, 5.9, 0.805, 2.05, 1.25, 2.755, 0.82),
  leafRow(12, 13.61, 7.8, 0.805, 2.1, 1.25, 2.905, 0.82),
  leafRow(16, 17.61, 11.8, 0.805, 2.1, 1.25, 2.905, 0.82),
];

/**
 * BS 978-2:1952 as recalled (memory, not checked against the document): wheel addendum 0.95 of the
 * theoretical one, wheel face arc 1.40 × the theoretical addendum, leaf dedendum = wheel addendum + 0.4.
 */
export const RECALLED = {
  wheelThickness: 1.571,
  wheelDedendum: 1.571,
  shortening: 0.95,
  faceArc: 1.4,
  leafClearance: 0.4,
  /** Leaf thickness to 10 leaves, and from 11. */
  leafThickness: [1.05, 1.25],
  /** Addendum and arc radius of the leaf's top for the two thicknesses: C to 7 leaves, B to 9, A from 10. */
  tops: {
    A: { addendum: [0.525, 0.625], radius: [0.525, 0.625] },
    B: { addendum: [0.67, 0.805], radius: [0.7, 0.835] },
    C: { addendum: [0.855, 1.05], radius: [1.05, 1.25] },
  },
} as const;

/** A misprint: a row whose figures do not agree with each other, with what they should add up to. */
export interface RowFault {
  readonly row: string;
  readonly figure: 'depthOfCut' | 'blank' | 'root';
  readonly printed: number;
  readonly computed: number;
}

/** Rows whose depth of cut, blank or root disagrees with addendum and dedendum by more than `slack` (× module). */
export function faultsOfTables(slack = 0.011): readonly RowFault[] {
  const wheels = Object.values(CUTTER_WHEELS).flatMap((row) => [
    { row: row.name, figure: 'depthOfCut' as const, printed: row.depthOfCut, computed: row.addendum + row.dedendum },
    { row: row.name, figure: 'blank' as const, printed: row.blankOver, computed: 2 * row.addendum },
    { row: row.name, figure: 'root' as const, printed: row.rootUnder, computed: 2 * row.dedendum },
  ]);
  const leaves = CUTTER_LEAVES.flatMap((row) => [
    {
      row: `${row.leaves} leaves`,
      figure: 'depthOfCut' as const,
      printed: row.depthOfCut,
      computed: row.addendum + row.dedendum,
    },
    {
      row: `${row.leaves} leaves`,
      figure: 'blank' as const,
      printed: row.blank,
      computed: row.leaves + 2 * row.addendum,
    },
    {
      row: `${row.leaves} leaves`,
      figure: 'root' as const,
      printed: row.root,
      computed: row.leaves - 2 * row.dedendum,
    },
  ]);
  return [...wheels, ...leaves].filter((figure) => Math.abs(figure.printed - figure.computed) > slack);
}
