/**
 * Drill programs in RS-274/NGC words, for one set-up and one plate.
 *
 * Plain moves by default, because simple controllers have no cycles; canned cycles G81 and G83 on request. Every hole is
 * approached from the lower left, so that slack in the screws always lies on the same side. Tools in order: spot all,
 * then each drill, then each reamer; holes of a tool from left to right.
 *
 * Source: NISTIR 6556, The NIST RS274/NGC Interpreter, Version 3 (words and cycles). ISO 6983 controllers use G70/G71
 * for inch and mm where these words use G20/G21; the header says so.
 */
import { MM_PER_INCH } from '../../movement/measures.ts';
import type { Hole } from '../drawing.ts';
import { fixed, trimmed } from './decimal.ts';

export interface DrillOptions {
  /** Names for the header. */
  readonly title?: string | undefined;
  readonly face?: string | undefined;
  readonly units?: 'mm' | 'inch' | undefined;
  readonly cycles?: boolean | undefined;
  /** Plate thickness, mm (default 3), and how far drills go past it, mm (default 1). */
  readonly thickness?: number | undefined;
  readonly breakThrough?: number | undefined;
  /** Height above the plate at which the tool travels, and at which feeding starts, mm (defaults 10 and 1). */
  readonly safeHeight?: number | undefined;
  readonly clearHeight?: number | undefined;
  /** Depth of each peck, mm; none when 0 (default 0 for plates up to three drill diameters thick). */
  readonly peck?: number | undefined;
  /** Depth of the spot, mm (default 0.8). */
  readonly spotDepth?: number | undefined;
  /** Feeds, mm a minute, and spindle speeds, turns a minute: careful starting values for brass. */
  readonly drillFeed?: number | undefined;
  readonly reamFeed?: number | undefined;
  readonly drillSpeed?: number | undefined;
  readonly reamSpeed?: number | undefined;
  /** Left for the reamer on the diameter, mm (default 0.1 to Ø 5, 0.2 above: common practice). */
  readonly reamAllowance?: number | undefined;
  /** How far to the lower left of each hole the approach starts, mm (default 2). */
  readonly approach?: number | undefined;
  /** Work zero in the drawing's coordinates, mm (default 0, 0), and where that is, in words. */
  readonly zero?: readonly [number, number] | undefined;
  readonly zeroSays?: string | undefined;
  /** Include holes that are drilled already (default false). */
  readonly again?: boolean | undefined;
}

type Settled = { readonly [Key in keyof DrillOptions]-?: NonNullable<DrillOptions[Key]> };

const USUAL = {
  title: 'Plate',
  face: 'marked face',
  units: 'mm',
  cycles: false,
  thickness: 3,
  breakThrough: 1,
  safeHeight: 10,
  clearHeight: 1,
  peck: -1,
  spotDepth: 0.8,
  drillFeed: 60,
  reamFeed: 80,
  drillSpeed: 1500,
  reamSpeed: 400,
  reamAllowance: -1,
  approach: 2,
  zero: [0, 0],
  zeroSays: 'the origin of the drawing',
  again: false,
} as const satisfies Settled;

/** One tool and the holes it makes. */
export interface DrillPass {
  readonly work: 'spot' | 'drill' | 'ream';
  /** Tool diameter, mm; 0 for the spotting drill. */
  readonly diameter: number;
  readonly holes: readonly Hole[];
}

/** Words carry at most four decimals: what simple controllers accept. */
const PLACES = 4;
/** Reaming allowances by size, mm: common practice. */
const SMALL_HOLE = 5;

/** The program as text: same holes and options, same bytes. Holes drilled already are left out. */
export function writeDrill(holes: readonly Hole[], options: DrillOptions = {}): string {
  const given = Object.fromEntries(Object.entries(options).filter(([, value]) => value !== undefined));
  const settled: Settled = { ...USUAL, ...given };
  const todo = holes.filter((hole) => settled.again || hole.state !== 'drilled');
  const passes = passesOf(todo, settled);
  const lines = [...headerLines(todo, passes, settled), ...startLines(settled)];
  passes.forEach((pass, index) => {
    lines.push(...passLines(pass, index + 1, settled));
  });
  lines.push(`G0 Z${word(settled.safeHeight, settled)}`, 'M5', 'M30', '%');
  return `${lines.join('\n')}\n`;
}

/** The passes in working order: spot, drills by size, reamers by size. */
export function passesOf(holes: readonly Hole[], options: DrillOptions = {}): readonly DrillPass[] {
  const left = (hole: Hole) => {
    const given = options.reamAllowance;
    if (given !== undefined && given >= 0) return given;
    return hole.diameter > SMALL_HOLE ? 0.2 : 0.1;
  };
  const drills = new Map<number, Hole[]>();
  const reamers = new Map<number, Hole[]>();
  const push = (map: Map<number, Hole[]>, key: number, hole: Hole) => {
    const rounded = Number(fixed(key, PLACES));
    map.set(rounded, [...(map.get(rounded) ?? []), hole]);
  };
  for (const hole of holes) {
    const under = hole.diameter - left(hole);
    if (hole.finish === 'ream' && under > 0) {
      push(drills, under, hole);
      push(reamers, hole.diameter, hole);
    } else push(drills, hole.diameter, hole);
  }
  const ordered = (work: DrillPass['work'], map: Map<number, Hole[]>): DrillPass[] =>
    [...map].sort(([a], [b]) => a - b).map(([diameter, own]) => ({ work, diameter, holes: sorted(own) }));
  if (holes.length === 0) return [];
  return [
    { work: 'spot', diameter: 0, holes: sorted(holes) },
    ...ordered('drill', drills),
    ...ordered('ream', reamers),
  ];
}

/** From left to right, then upwards. */
const sorted = (holes: readonly Hole[]): readonly Hole[] =>
  [...holes].sort((a, b) => a.x - b.x || a.y - b.y || (a.id < b.id ? -1 : 1));

const word = (mm: number, { units }: Settled): string => trimmed(units === 'inch' ? mm / MM_PER_INCH : mm, PLACES, 1);

/** Longest comment: simple controllers cut or refuse long lines (common practice: 80 characters with the brackets). */
const COMMENT_WIDTH = 72;

/** Comments that no controller can trip over: capitals, no brackets, no letters beyond ASCII, short lines. */
function comments(text: string): string[] {
  const plain = text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toUpperCase()
    .replace(/[()]/g, ' ')
    .replace(/,/g, ';')
    .replace(/[^\x20-\x7e]/g, '?');
  const lines: string[] = [];
  let line = '';
  for (const word of plain.split(/\s+/).filter((each) => each !== '')) {
    if (line !== '' && line.length + 1 + word.length > COMMENT_WIDTH) {
      lines.push(`(${line})`);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, `(${line.slice(0, COMMENT_WIDTH)})`];
}

const comment = (text: string): string => comments(text)[0] ?? '()';

function headerLines(holes: readonly Hole[], passes: readonly DrillPass[], settled: Settled): string[] {
  const unit = settled.units;
  const xs = holes.map((hole) => hole.x - settled.zero[0]);
  const ys = holes.map((hole) => hole.y - settled.zero[1]);
  const span = (values: readonly number[]) =>
    values.length === 0 ? 'none' : `${word(Math.min(...values), settled)} TO ${word(Math.max(...values), settled)}`;
  const tools = passes.map(({ work, diameter, holes: own }, index) => {
    const tool =
      work === 'spot'
        ? 'spotting drill'
        : `${work === 'drill' ? 'drill' : 'reamer'} diameter ${word(diameter, settled)}`;
    return `T${index + 1} ${tool}: ${own.length === 1 ? '1 hole' : `${own.length} holes`}`;
  });
  return [
    '%',
    ...[
      settled.title,
      settled.face,
      `Units ${unit}. X0 Y0 is ${settled.zeroSays}.`,
      'Z0 is the face of the plate.',
      `Holes ${holes.length}. X ${span(xs)}. Y ${span(ys)}.`,
      ...tools,
      ...CAUTIONS,
    ].flatMap(comments),
  ];
}

const CAUTIONS: readonly string[] = [
  'CAUTION: read this program and run it in the air above the work before cutting.',
  'Clamp the plate on waste; keep clamps clear of the path.',
  'Check tool numbers; tool lengths and the work zero.',
  'Feeds and speeds are starting values: set them for your metal and tools.',
  'Guard the machine. Wear eye protection. No gloves or loose sleeves near a spindle.',
  'Local codes; the instructions of the maker of the machine; and licensed or trained practice come first.',
  'Some ISO 6983 controllers use G70 and G71 for inch and mm: check what G20 and G21 mean on yours.',
];

function startLines(settled: Settled): string[] {
  return [
    `G17 ${settled.units === 'inch' ? 'G20' : 'G21'} G40 G49 G80 G90 G94`,
    'G54',
    `G0 Z${word(settled.safeHeight, settled)}`,
  ];
}

function passLines(pass: DrillPass, tool: number, settled: Settled): string[] {
  const ream = pass.work === 'ream';
  const speed = ream ? settled.reamSpeed : settled.drillSpeed;
  const feed = ream ? settled.reamFeed : settled.drillFeed;
  const bottom = pass.work === 'spot' ? -settled.spotDepth : -(settled.thickness + settled.breakThrough);
  const peck = pass.work === 'drill' ? peckOf(pass.diameter, settled) : 0;
  const name = pass.work === 'spot' ? 'spot' : `${pass.work} diameter ${word(pass.diameter, settled)}`;
  const lines = [
    comment(`T${tool} ${name}`),
    'M5',
    `T${tool} M6`,
    `S${fixed(speed, 0)} M3`,
    `F${word(feed, settled)}`,
    `G0 Z${word(settled.safeHeight, settled)}`,
  ];
  for (const hole of pass.holes) lines.push(...holeLines(hole, bottom, peck, ream, settled));
  return lines;
}

/** Plates thicker than three diameters are pecked one diameter at a time: common practice. */
function peckOf(diameter: number, settled: Settled): number {
  if (settled.peck >= 0) return settled.peck;
  return settled.thickness > 3 * diameter ? diameter : 0;
}

function holeLines(hole: Hole, bottom: number, peck: number, ream: boolean, settled: Settled): string[] {
  const x = hole.x - settled.zero[0];
  const y = hole.y - settled.zero[1];
  const w = (value: number) => word(value, settled);
  const lines = [comment(hole.label), `G0 X${w(x - settled.approach)} Y${w(y - settled.approach)}`];
  if (settled.cycles) {
    const name = peck > 0 ? 'G83' : 'G81';
    // A reamer is fed out again, as G85 does: at speed it would score the hole.
    const cycle = ream ? 'G85' : name;
    const step = cycle === 'G83' ? ` Q${w(peck)}` : '';
    lines.push(`G98 ${cycle} X${w(x)} Y${w(y)} Z${w(bottom)} R${w(settled.clearHeight)}${step}`, 'G80');
    return lines;
  }
  lines.push(`X${w(x)} Y${w(y)}`, `Z${w(settled.clearHeight)}`);
  if (peck > 0) lines.push(...peckLines(bottom, peck, settled));
  else lines.push(`G1 Z${w(bottom)}`);
  if (ream) lines.push(`G1 Z${w(settled.clearHeight)}`);
  lines.push(`G0 Z${w(settled.safeHeight)}`);
  return lines;
}

/** Rapid back to this far above the last bottom before the next peck, mm (NISTIR 6556 uses 0.254). */
const PECK_CLEAR = 0.254;

function peckLines(bottom: number, peck: number, settled: Settled): string[] {
  const lines: string[] = [];
  const w = (value: number) => word(value, settled);
  let last = settled.clearHeight;
  while (last > bottom) {
    const next = Math.max(bottom, last - peck);
    lines.push(`G1 Z${w(next)}`);
    if (next > bottom) lines.push(`G0 Z${w(settled.clearHeight)}`, `G0 Z${w(next + PECK_CLEAR)}`);
    last = next;
  }
  return lines;
}
