/** Which row of proportions a cycloidal wheel or pinion follows. */
import { isOfPins, type Movement, type Wheel } from '../../movement/schema.ts';
import type { ToothDoubt } from '../toothFaults.ts';
import { CUTTER_LEAVES, CUTTER_WHEELS, type LeafRow, RECALLED, type WheelRow } from './clockTables.ts';
import { pointedFace } from './epicycloid.ts';
import { moduleOf } from './moduleOf.ts';
import { type OwnRow, ownRowOf, sourceOfRow } from './ownTable.ts';
import { isPinion, mateTeethOf, partnersOf } from './partners.ts';
import { pointedPinFace } from './pinEnvelope.ts';
import type { ToothRow } from './toothRow.ts';
import { trundleRadiusOf } from './trundles.ts';

/** Names that `wheel.table` may give for cycloidal teeth; the first is the usual one. */
export const CLOCK_FAMILIES = [
  'BS 978',
  'BS 978 fine',
  'BS 978 deep',
  'BS 978 short',
  'BS 978 round bottom',
  'BS 978 from memory',
  'epicycloid',
  'lantern wheel',
] as const;
export type ClockFamily = (typeof CLOCK_FAMILIES)[number];

const CUTTERS = "a cutter maker's table of the BS 978 family";
const isFamily = (name: string): name is ClockFamily => (CLOCK_FAMILIES as readonly string[]).includes(name);

/** Modules between which the cutter maker's wheels have the deep root (0.5 to 1.0 as printed; midway to the next size). */
const DEEP_FROM = 0.475;
const DEEP_TO = 1.05;

function familyOf(wheel: Wheel, movement: Movement): { family: ClockFamily; doubts: ToothDoubt[] } {
  const doubts: ToothDoubt[] = [];
  if (wheel.table !== undefined) {
    if (isFamily(wheel.table)) return { family: wheel.table, doubts };
    doubts.push({
      kind: 'unknownTable',
      wheel: wheel.id,
      form: wheel.form,
      table: wheel.table,
      used: CLOCK_FAMILIES[0],
      known: CLOCK_FAMILIES,
    });
  }
  const mate = partnersOf(wheel, movement)[0]?.wheel;
  const drivesPins = mate !== undefined && isOfPins(mate);
  return { family: drivesPins && !isPinion(wheel, movement) ? 'lantern wheel' : 'BS 978', doubts };
}

function cutterWheel(family: ClockFamily, module: number): WheelRow {
  if (family === 'BS 978 short') return CUTTER_WHEELS.short;
  if (family === 'BS 978 round bottom') return CUTTER_WHEELS.roundBottom;
  if (family === 'BS 978 fine') return CUTTER_WHEELS.fine;
  if (family === 'BS 978 deep') return CUTTER_WHEELS.deep;
  return module >= DEEP_FROM && module <= DEEP_TO ? CUTTER_WHEELS.deep : CUTTER_WHEELS.fine;
}

/** The tabulated leaf row, with the dedendum of counts between two rows in proportion. */
function cutterLeaf(leaves: number): LeafRow {
  const below = CUTTER_LEAVES.findLast((row) => row.leaves <= leaves) ?? CUTTER_LEAVES[0];
  const above = CUTTER_LEAVES.find((row) => row.leaves >= leaves) ?? CUTTER_LEAVES.at(-1);
  if (!below || !above) throw new Error('the table of leaves is empty');
  if (below.leaves >= above.leaves) return below;
  const part = (leaves - below.leaves) / (above.leaves - below.leaves);
  return { ...below, dedendum: below.dedendum + part * (above.dedendum - below.dedendum) };
}

function leafSource(leaves: number): string {
  const exact = CUTTER_LEAVES.some((row) => row.leaves === leaves);
  return exact ? `${CUTTERS}, ${leaves} leaves` : `${CUTTERS}, between its rows (${leaves} leaves has none)`;
}

function tabulatedLeaf(leaves: number, doubts: ToothDoubt[]): ToothRow {
  const { addendum, dedendum, thickness, tipRadius } = cutterLeaf(leaves);
  const source = leafSource(leaves);
  return { role: 'leaf', addendum, dedendum, thickness, face: { kind: 'ogive', radius: tipRadius }, source, doubts };
}

/** Leaves by the recalled BS 978-2 rules, or radial flanks with half-round tops for the exact epicycloid. */
function recalledLeaf(leaves: number, wheelTeeth: number, rounded: boolean, doubts: ToothDoubt[]): ToothRow {
  const thick = leaves >= 11 ? 1 : 0;
  const profile = rounded || leaves >= 10 ? 'A' : leaves >= 8 ? 'B' : 'C';
  const mate = RECALLED.shortening * pointedFace(wheelTeeth, leaves).addendum;
  return {
    role: 'leaf',
    addendum: RECALLED.tops[profile].addendum[thick],
    dedendum: mate + RECALLED.leafClearance,
    thickness: RECALLED.leafThickness[thick],
    face: { kind: 'ogive', radius: RECALLED.tops[profile].radius[thick] },
    source: `BS 978-2:1952 profile ${profile} (from memory)`,
    doubts,
  };
}

function theoreticalWheel(wheel: Wheel, movement: Movement, exact: boolean, doubts: ToothDoubt[]): ToothRow {
  const leaves = mateTeethOf(wheel, movement);
  const { addendum: pointed } = pointedFace(wheel.teeth, leaves);
  return {
    role: 'wheel',
    addendum: RECALLED.shortening * pointed,
    dedendum: RECALLED.wheelDedendum,
    thickness: exact ? Math.PI / 2 : RECALLED.wheelThickness,
    face: exact ? { kind: 'epicycloid', leaves } : { kind: 'arc', radius: RECALLED.faceArc * pointed, apex: pointed },
    source: exact
      ? `epicycloid for ${leaves} leaves, addendum 0.95 of the pointed one`
      : `BS 978-2:1952 for ${leaves} leaves (from memory)`,
    doubts,
  };
}

/** A wheel for a lantern pinion: tooth = space, the face the envelope of the pin, 0.95 of the pointed height. */
function lanternWheel(wheel: Wheel, movement: Movement, doubts: ToothDoubt[]): ToothRow {
  const module = moduleOf(wheel.size);
  const mate = partnersOf(wheel, movement).find((partner) => isOfPins(partner.wheel))?.wheel;
  const pins = wheel.mateTeeth ?? mate?.teeth ?? mateTeethOf(wheel, movement);
  const pinRadius = mate ? trundleRadiusOf(mate) / module : trundleRadiusOf({ teeth: pins, size: { module: 1 } });
  const thickness = Math.PI / 2;
  const pair = { wheel: wheel.teeth / 2, pinion: pins / 2, pin: pinRadius };
  const pointed = pointedPinFace(pair, thickness / wheel.teeth) - pair.wheel;
  return {
    role: 'wheel',
    addendum: RECALLED.shortening * pointed,
    dedendum: RECALLED.wheelDedendum,
    thickness,
    face: { kind: 'pinEnvelope', pins, pinRadius },
    source: `envelope of ${pins} round pins, addendum 0.95 of the pointed one`,
    doubts,
  };
}

/** A row of the maker's own: arcs of its radius that leave the flank without a corner, or the exact epicycloid. */
function ownRow(row: OwnRow, wheel: Wheel, movement: Movement): ToothRow {
  return {
    role: isPinion(wheel, movement) ? 'leaf' : 'wheel',
    addendum: row.addendum,
    dedendum: row.dedendum,
    thickness: row.thickness ?? Math.PI / 2,
    face:
      row.faceRadius === undefined
        ? { kind: 'epicycloid', leaves: mateTeethOf(wheel, movement) }
        : { kind: 'ogive', radius: row.faceRadius },
    source: sourceOfRow(row),
    doubts: [],
  };
}

/** The row of a cycloidal wheel, before its own overrides. */
export function cycloidalRow(wheel: Wheel, movement: Movement): ToothRow {
  const own = ownRowOf(wheel, movement);
  if (own) return ownRow(own, wheel, movement);
  const { family, doubts } = familyOf(wheel, movement);
  const pinion = isPinion(wheel, movement);
  const mate = mateTeethOf(wheel, movement);
  if (family === 'lantern wheel') return lanternWheel(wheel, movement, doubts);
  if (family === 'epicycloid' || family === 'BS 978 from memory') {
    const exact = family === 'epicycloid';
    return pinion ? recalledLeaf(wheel.teeth, mate, exact, doubts) : theoreticalWheel(wheel, movement, exact, doubts);
  }
  if (pinion) return tabulatedLeaf(wheel.teeth, doubts);
  const row = cutterWheel(family, moduleOf(wheel.size));
  return {
    role: 'wheel',
    addendum: row.addendum,
    dedendum: row.dedendum,
    thickness: row.thickness,
    face: { kind: 'ogive', radius: row.tipRadius },
    source: `${CUTTERS}, ${row.name.replace('BS 978 ', '')}`,
    doubts,
  };
}
