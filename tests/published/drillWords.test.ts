/**
 * Drill programs followed by an interpreter written for this test from the meanings of the words in NISTIR 6556 (The NIST
 * RS274/NGC Interpreter, Version 3); cycles G81, G83 and G85, retract levels G98 and G99. The tables of retract levels and
 * peck bottoms are derived from that text (reference H, check values).
 */
import { describe, expect, it } from 'vitest';
import { preflight } from '../../solver/files/index.ts';
import { writeDrill } from '../../solver/files/write/drill.ts';
import type { DrillOptions } from '../../solver/files/write/drillWords.ts';
import type { Hole } from '../../solver/marking/index.ts';
import { fifteenHoles } from '../files/testPlate.ts';
import { runProgram } from './ngcInterpreter.ts';

describe('the interpreter itself', () => {
  // Reference H, derived: old Z, R, mode, clear-Z.
  it.each([
    [3, 1.8, 98, 3],
    [3, 1.8, 99, 1.8],
    [1, 1.8, 98, 1.8],
    [1, 1.8, 99, 1.8],
  ])('old Z %d, R %d, G%d retracts to %d', (oldZ, r, mode, clear) => {
    const run = runProgram(`G21 G90 F60 S100 M3\nG0 X0 Y0 Z${oldZ}\nG${mode} G81 X5 Y5 Z-2 R${r}\nG80\nM30`);
    expect(run.moves.at(-1)?.z).toBe(clear);
  });
  it.each([
    [2, -10, 3, [-1, -4, -7, -10]],
    [1, -5, 2, [-1, -3, -5]],
    [0.5, -4, 1.5, [-1, -2.5, -4]],
  ])('R %d, Z %d, Q %d pecks to the derived bottoms', (r, z, q, bottoms) => {
    const run = runProgram(`G21 G90 F60 S100 M3\nG0 X0 Y0 Z5\nG98 G83 X5 Y5 Z${z} R${r} Q${q}\nG80\nM30`);
    expect(run.cuts.map((cut) => cut.to)).toEqual(bottoms);
  });
  it('refuses what the report calls an error', () => {
    expect(() => runProgram('G21 G90 F60\nG81 X0 Y0 Z2 R1')).toThrow(/R must be above Z/);
    expect(() => runProgram('G21 G90 G1 X5')).toThrow(/feed/);
    expect(() => runProgram('G21 G90\nG80 X5')).toThrow(/axis word/);
  });
});

const holes = fifteenHoles();
const CASES: readonly (readonly [string, DrillOptions])[] = [
  ['plain moves', {}],
  ['canned cycles', { cycles: true }],
  ['plain pecks', { thickness: 12 }],
  ['cycles with pecks', { cycles: true, peck: 1 }],
  ['inches', { units: 'inch' }],
  ['inches with cycles', { units: 'inch', cycles: true }],
  ['from a corner', { zero: [-40, -30], zeroSays: 'the lower left corner' }],
];

describe.each(CASES)('fifteen holes written as %s', (_name, options) => {
  const text = writeDrill(holes, options);
  const run = runProgram(text);
  const [zeroX, zeroY] = options.zero ?? [0, 0];
  // Four decimals of an inch are 0.00254 mm, so half a unit is 0.00127; of a millimetre 0.00005.
  const rounding = options.units === 'inch' ? 0.00128 : 0.000051;

  it('read back to the same places, every hole spotted, drilled, and reamed where it should be', () => {
    const want = (own: readonly Hole[]) =>
      own.map(({ x, y }) => [x - zeroX, y - zeroY] as const).sort((a, b) => a[0] - b[0]);
    const got = (tool: (t: number) => boolean) => {
      const places = new Map<string, readonly [number, number]>();
      for (const cut of run.cuts.filter((each) => tool(each.tool))) places.set(`${cut.x},${cut.y}`, [cut.x, cut.y]);
      return [...places.values()].sort((a, b) => a[0] - b[0]);
    };
    const drills = new Set(holes.map((hole) => (hole.finish === 'ream' ? `r${hole.diameter}` : `d${hole.diameter}`)))
      .size;
    const compare = (found: readonly (readonly [number, number])[], wanted: readonly (readonly [number, number])[]) => {
      expect(found).toHaveLength(wanted.length);
      found.forEach(([x, y], index) => {
        expect(Math.abs(x - (wanted[index]?.[0] ?? Number.NaN))).toBeLessThanOrEqual(rounding);
        expect(Math.abs(y - (wanted[index]?.[1] ?? Number.NaN))).toBeLessThanOrEqual(rounding);
      });
    };
    compare(
      got((tool) => tool === 1),
      want(holes),
    );
    compare(
      got((tool) => tool > 1 && tool <= 1 + drills),
      want(holes),
    );
    compare(
      got((tool) => tool > 1 + drills),
      want(holes.filter((hole) => hole.finish === 'ream')),
    );
  });

  it('goes through the plate, and never moves across the work below its face', () => {
    const thickness = options.thickness ?? 3;
    for (const cut of run.cuts.filter((each) => each.tool > 1)) expect(cut.to).toBeLessThan(0);
    const deepest = Math.min(...run.cuts.map((cut) => cut.to));
    expect(Math.abs(deepest + thickness + 1)).toBeLessThan(0.002);
    for (const move of run.moves) {
      if (move.across) expect(Math.min(move.fromZ, move.z)).toBeGreaterThan(0);
      if (move.rapid && move.z < move.fromZ && move.z < 0) expect(run.pecked).toBe(true);
    }
  });

  it('comes to every hole from the lower left', () => {
    const arrivals = run.moves.filter(
      (move) => move.across && run.cuts.some((cut) => cut.x === move.x && cut.y === move.y),
    );
    expect(arrivals.length).toBeGreaterThanOrEqual(15);
    for (const move of arrivals) {
      expect(move.x - move.fromX).toBeGreaterThan(0.5);
      expect(move.y - move.fromY).toBeGreaterThan(0.5);
    }
  });

  it('holds only plain words', () => {
    const code = text.replace(/\([^)]*\)/g, '');
    expect(code).not.toMatch(/[0-9]e/i);
    expect(code).not.toMatch(/,/);
    expect(code).not.toMatch(/\.\d{5}/);
    expect(code).not.toMatch(/-0(\.0*)?(?![\d.])/);
    expect(code).toMatch(options.units === 'inch' ? /G20/ : /G21/);
    expect(code).toMatch(/G90/);
    expect(text).toMatch(/\(CAUTION/);
    expect(text).toMatch(/LOCAL CODES/);
    expect(text).toMatch(/GUARD/);
    expect([...text].every((character) => character.charCodeAt(0) < 127)).toBe(true);
    expect(/\([^)]*\(/.test(text)).toBe(false);
    expect(writeDrill(holes, options)).toBe(text);
  });

  it('passes the pre-flight', () => {
    const wanted = holes.map(({ x, y }) => ({ x: x - zeroX, y: y - zeroY }));
    const report = preflight(
      { name: 'plate.ngc', format: 'drill', text },
      options.units === 'inch' ? undefined : { holes: wanted },
    );
    expect(report.problems).toEqual([]);
    expect(report.holes).toHaveLength(15);
  });
});

describe('what is left out', () => {
  it('holes drilled already are not drilled again', () => {
    const some = holes.map((hole, index): Hole => (index < 5 ? { ...hole, state: 'drilled' } : hole));
    const run = runProgram(writeDrill(some));
    expect(new Set(run.cuts.map((cut) => `${cut.x},${cut.y}`)).size).toBe(10);
  });
  it('a plate without holes gives a program that does nothing', () => {
    expect(runProgram(writeDrill([])).cuts).toEqual([]);
  });
  it('the pre-flight sees faults', () => {
    const text = writeDrill(holes).replace('F60.0', 'F6e1').replace('M30', '');
    expect(preflight({ name: 'a.ngc', format: 'drill', text }).problems.join()).toMatch(/exponent.*no end/);
    expect(
      preflight(
        { name: 'a.ngc', format: 'drill', text: writeDrill(holes.slice(1)) },
        { holes: [...holes] },
      ).problems.join(),
    ).toMatch(/14 holes/);
  });
});
