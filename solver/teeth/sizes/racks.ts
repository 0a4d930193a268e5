/**
 * Standard basic racks of involute wheels: ISO 53:1998, profiles A to D (from memory; fillets of A and D agree with their
 * derivation), and the inch system's full-depth teeth of 14½°.
 */

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

/**
 * Full-depth teeth of 14½° by diametral pitch: addendum 1/DP, least dedendum 1.157/DP, so a whole depth of 2.157/DP; the
 * fillet is 4/3 of the clearance of 0.157/DP. American Standard spur gear tooth form, ASA B6.1-1932, as its tables are
 * printed in handbooks (the number of the standard is from memory, the figures were read).
 */
export const DIAMETRAL_RACK: BasicRack = {
  name: '14½° full depth',
  pressureAngle: 14.5,
  addendum: 1,
  dedendum: 1.157,
  fillet: (4 / 3) * 0.157,
  source: 'ASA B6.1-1932, 14½° full depth (2.157/DP)',
};

/** All racks that a wheel's `table` may name, the usual one first. */
export const RACKS: readonly BasicRack[] = [...BASIC_RACKS, DIAMETRAL_RACK];

/** The rack of that name ("ISO 53 B", or just "B"); `undefined` when there is none. */
export function rackNamed(name: string): BasicRack | undefined {
  return RACKS.find((rack) => rack.name === name || rack.name === `ISO 53 ${name}`);
}
