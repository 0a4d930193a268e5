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
import type { Hole } from '../../marking/index.ts';
import { decimalFixed } from '../../movement/decimal.ts';
import { comment, headerLines } from './drillHeader.ts';
import { type DrillPass, passesOf } from './drillPasses.ts';
import { bottomOf, type DrillOptions, feedOf, type SettledDrill, settledDrill, speedOf, word } from './drillWords.ts';

/** The program as text: same holes and options, same bytes. Holes drilled already are left out. */
export function writeDrill(holes: readonly Hole[], options: DrillOptions = {}): string {
  const settled = settledDrill(options);
  const todo = holes.filter((hole) => settled.again || hole.state !== 'drilled');
  const passes = passesOf(todo, settled);
  const lines = [
    ...headerLines(todo, passes, settled),
    ...startLines(settled),
    ...passes.flatMap((pass) => passLines(pass, settled)),
    `G0 Z${word(settled.safeHeight, settled)}`,
    'M5',
    'M30',
    '%',
  ];
  return `${lines.join('\n')}\n`;
}

function startLines(settled: SettledDrill): string[] {
  return [
    `G17 ${settled.units === 'inch' ? 'G20' : 'G21'} G40 G49 G80 G90 G94`,
    'G54',
    `G0 Z${word(settled.safeHeight, settled)}`,
  ];
}

function passLines(pass: DrillPass, settled: SettledDrill): string[] {
  const bottom = bottomOf(pass.work, settled);
  const peck = pass.work === 'drill' ? peckOf(pass.diameter, settled) : 0;
  const name = pass.work === 'spot' ? 'spot' : `${pass.work} diameter ${word(pass.diameter, settled)}`;
  return [
    comment(`T${pass.tool} ${name}`),
    'M5',
    `T${pass.tool} M6`,
    `S${decimalFixed(speedOf(pass, settled), 0)} M3`,
    `F${word(feedOf(pass, settled), settled)}`,
    `G0 Z${word(settled.safeHeight, settled)}`,
    ...pass.holes.flatMap((hole) => holeLines(hole, bottom, peck, pass.work === 'ream', settled)),
  ];
}

/** Plates thicker than three diameters are pecked one diameter at a time: common practice. */
function peckOf(diameter: number, { peck, thickness }: SettledDrill): number {
  return peck ?? (thickness > 3 * diameter ? diameter : 0);
}

function holeLines(hole: Hole, bottom: number, peck: number, ream: boolean, settled: SettledDrill): string[] {
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

function peckLines(bottom: number, peck: number, settled: SettledDrill): string[] {
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
