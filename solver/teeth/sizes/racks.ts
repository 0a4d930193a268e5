/** Standard basic racks of involute wheels: ISO 53:1998, profiles A to D (from memory; fillets of A and D agree with their derivation). */

/** A standard's rack: the straight-sided tooth that involute wheels are generated from. */
export interface BasicRack {
  readonly name: string;
  /** Degrees. */
  readonly pressureAngle: number;
  /** × module: addendum, dedendum and root fillet radius of the rack's own tooth. */
  readonly addendum: number;
  readonly dedendum: number;
  readonly fillet: number;
  readonly source: string;
}

const iso53 = (profile: string, dedendum: number, fillet: number): BasicRack => ({
  name: `ISO 53 ${profile}`,
  pressureAngle: 20,
  addendum: 1,
  dedendum,
  fillet,
  source: `ISO 53:1998 profile ${profile} (from memory)`,
});

export const BASIC_RACKS: readonly BasicRack[] = [
  iso53('A', 1.25, 0.38),
  iso53('B', 1.25, 0.3),
  iso53('C', 1.25, 0.25),
  iso53('D', 1.4, 0.39),
];

/** The rack of that name ("ISO 53 B", or just "B"); `undefined` when there is none. */
export function rackNamed(name: string): BasicRack | undefined {
  return BASIC_RACKS.find((rack) => rack.name === name || rack.name === `ISO 53 ${name}`);
}
