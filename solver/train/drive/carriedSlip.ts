/**
 * How far a hand turns when one pair of teeth slips and the drive is held, in a train with carriers.
 *
 * Small turns δ of all arbors are the unknowns. A link between f and t on an arm a asks
 * z_f (δ_f − δ_a) − s z_t (δ_t − δ_a) = slip, with s the sense of the link and 0 for a where it stands on the plates; the
 * drive and arbors that never turn have δ = 0. One link a reached arbor is taken, so that every slip counts once. What a
 * slip does to a hand is its entry in the solution of the transposed system for that hand.
 */
import { Matrix, SVD } from 'ml-matrix';
import type { ArborId } from '../../movement/ids.ts';
import type { Movement } from '../../movement/schema.ts';
import type { Link } from '../turning/linkage.ts';
import type { Turning } from '../turning/turning.ts';

/** Below this share of the largest singular value a direction counts as one in which nothing is held. */
const RANK = 1e-10;

/** What a slip of one link does to a hand. */
export interface Slip {
  readonly link: Link;
  /** Turn of the hand, without sign, for a slip of one tooth's share of the wheel: z times the angle of the wheel. */
  readonly turn: number;
}

/** For a hand: the links by which arbors were reached, each with what its slip does there. */
export function carriedSlips(movement: Movement, turning: Turning): (hand: ArborId) => readonly Slip[] {
  const column = new Map([...turning.arbors.keys()].map((id, index) => [id, index]));
  const links = [...new Set([...turning.arbors.values()].flatMap(({ drivenBy }) => drivenBy ?? []))];
  const still = movement.arbors.filter(({ turns }) => turns === 'never').map(({ id }) => id);
  const held = [...still, ...(turning.drive ? [turning.drive.arbor] : [])].filter((id) => column.has(id));
  const system = Matrix.zeros(links.length + held.length, column.size);
  const add = (row: number, id: ArborId | undefined, value: number): void => {
    const at = id === undefined ? undefined : column.get(id);
    if (at !== undefined) system.set(row, at, system.get(row, at) + value);
  };
  links.forEach(({ from, to, fromTeeth, toTeeth, sense, arm }, row) => {
    add(row, from, fromTeeth);
    add(row, to, -sense * toTeeth);
    add(row, arm, sense * toTeeth - fromTeeth);
  });
  held.forEach((id, index) => {
    add(links.length + index, id, 1);
  });
  const inverse = inverseOf(system);
  return (hand) => {
    const at = column.get(hand);
    return at === undefined ? [] : links.map((link, row) => ({ link, turn: Math.abs(inverse.get(at, row)) }));
  };
}

/** The pseudo-inverse; turns that nothing holds stay as small as they can. */
function inverseOf(system: Matrix): Matrix {
  const { leftSingularVectors: u, rightSingularVectors: v, diagonal } = new SVD(system, { autoTranspose: true });
  const least = RANK * Math.max(...diagonal, 0);
  const scales = diagonal.map((value) => (value > least ? 1 / value : 0));
  return v.mmul(Matrix.diag(scales)).mmul(u.transpose());
}
