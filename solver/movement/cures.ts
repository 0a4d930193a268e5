/** How holes that are off their place are cured, bushes pressed and holes reamed: the maker's own limits. */
import { z } from 'zod';
import { bounded, extent, length } from './quantities.ts';

export const cures = z.looseObject({
  /** A hole nearer to its place than this is left, mm (practice: 0.01 to 0.02 is what careful marking out gives). */
  leaveWithin: extent.default(0.015),
  /** A hole further off than this is plugged and drilled afresh, mm; a fifth of its diameter when absent. */
  plugBeyond: extent.exactOptional(),
  /** Widest that a hole may be opened, mm; its neighbours and the edge bound it in any case by `leastWall`. */
  widestHole: length.exactOptional(),
  /** Least metal left: the wall of a bush, and between an opened hole and its neighbours, mm (common practice for brass). */
  leastWall: length.default(0.8),
  /** How much of its interference a pressed bush closes in the bore, as a share (makers measure 0.6 to 1). */
  bushClosing: bounded(0, 1.5).default(0.8),
  /** How much wider than itself a reamer cuts, mm, as tried in a scrap of the same metal (common practice: some µm). */
  reamerCutsOver: bounded(-0.05, 0.2).default(0.005),
});
