/** How the holes of the plates are drilled by program: the maker's choices, with careful values where he made none. */
import { z } from 'zod';
import { pointId } from './ids.ts';
import { bounded, note } from './quantities.ts';

/** Feeds, mm a minute, and spindle speeds, turns a minute: what small machines can do, with room to spare. */
const feed = bounded(1, 10_000);
const speed = bounded(10, 100_000);
const diameter = bounded(0.05, 200);

/** What makes the holes of one finished diameter, where the usual will not do. */
export const drillTool = z.looseObject({
  /** Finished diameter of the holes that it is for, mm. */
  diameter,
  /** Diameter of the drill, mm; the hole's own, less what is left for the reamer, where none is given. */
  drill: diameter.exactOptional(),
  /** Whether these holes are reamed; as each hole asks where it is not said. */
  ream: z.boolean().exactOptional(),
  /** Place of the drill in the machine's tool table; counted on where none is given. */
  number: z.int().min(1).max(999).exactOptional(),
  feed: feed.exactOptional(),
  speed: speed.exactOptional(),
  note: note.exactOptional(),
});

/** The defaults are careful starting values for small drills in brass: common practice, none for any one machine. */
export const drilling = z.looseObject({
  units: z.enum(['mm', 'inch']).default('mm'),
  /** Canned cycles in place of plain moves, for controllers that know them. */
  cycles: z.boolean().default(false),
  /** Where X0 Y0 is on plates with edges, as seen on the face; a round plate has its centre. */
  corner: z.enum(['lower left', 'lower right', 'upper left', 'upper right']).default('lower left'),
  /** A point that is X0 Y0 instead, on every plate that has it. */
  zeroAt: pointId.exactOptional(),
  /** Heights above the plate at which the tool travels, and at which feeding starts, mm. */
  safeHeight: bounded(0.5, 500).default(10),
  clearHeight: bounded(0.05, 100).default(1),
  /** How far the drills go in, mm: through the plate, and `breakThrough` beyond it, where none is given. */
  depth: bounded(0.05, 500).exactOptional(),
  breakThrough: bounded(0, 50).default(1),
  /** Every hole is spotted first, this deep, mm. */
  spot: z.boolean().default(true),
  spotDepth: bounded(0.05, 10).default(0.8),
  /** Depth of each peck, mm, none when 0; a drill's own diameter in plates thicker than three of them where none is given. */
  peck: bounded(0, 100).exactOptional(),
  drillFeed: feed.default(60),
  reamFeed: feed.default(80),
  drillSpeed: speed.default(1500),
  reamSpeed: speed.default(400),
  /** Left for the reamer on the diameter, mm; 0.1 to Ø 5 and 0.2 above where none is given: common practice. */
  reamAllowance: bounded(0, 5).exactOptional(),
  /** How far to the lower left of each hole the approach starts, mm. */
  approach: bounded(0, 50).default(2),
  tools: z.array(drillTool).max(500).default([]),
});
