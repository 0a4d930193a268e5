/**
 * DXF files read back by two readers that are not ours: ezdxf (Debian python3-ezdxf, by its audit and its own geometry)
 * and dxf-parser (npm). Facts of the format: Autodesk DXF Reference, see the writer.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { preflight } from '../../solver/files/index.ts';
import { type DxfOptions, writeDxf } from '../../solver/files/write/dxf.ts';
import { F_LEFT, TEST_HOLES, testPlate } from '../files/testPlate.ts';
import { everyConstruction } from '../marking/placedByHand.ts';

/** Audits the file, and tells its entities; polylines as points and bulges, extents from ezdxf's own flattening. */
const READER = `
import sys, json, ezdxf
from ezdxf import bbox, units
doc = ezdxf.readfile(sys.argv[1])
audit = doc.audit()
msp = doc.modelspace()
out = {'version': doc.dxfversion, 'errors': len(audit.errors), 'fixes': len(audit.fixes), 'units': doc.units,
       'circles': [], 'arcs': [], 'lines': [], 'paths': [], 'others': [], 'layers': sorted(l.dxf.name for l in doc.layers)}
for e in msp:
    d = e.dxf
    if e.dxftype() == 'CIRCLE': out['circles'].append([d.layer, d.center.x, d.center.y, d.radius])
    elif e.dxftype() == 'ARC': out['arcs'].append([d.layer, list(e.start_point)[:2], list(e.end_point)[:2], d.radius])
    elif e.dxftype() == 'LINE': out['lines'].append([d.layer, list(d.start)[:2], list(d.end)[:2]])
    elif e.dxftype() == 'LWPOLYLINE': out['paths'].append([d.layer, bool(e.closed), [[p[0], p[1], p[4]] for p in e.get_points()]])
    elif e.dxftype() == 'POLYLINE': out['paths'].append([d.layer, bool(e.is_closed), [[v.dxf.location.x, v.dxf.location.y, v.dxf.get('bulge', 0)] for v in e.vertices]])
    else: out['others'].append(e.dxftype())
box = bbox.extents([e for e in msp if e.dxf.layer in ('OUTLINE', 'HOLES', 'OPENINGS')])
out['extents'] = [box.extmin.x, box.extmin.y, box.extmax.x, box.extmax.y]
print(json.dumps(out))
`;

interface ReadBack {
  version: string;
  errors: number;
  fixes: number;
  units: number;
  circles: [string, number, number, number][];
  arcs: [string, [number, number], [number, number], number][];
  lines: [string, [number, number], [number, number]][];
  paths: [string, boolean, [number, number, number][]][];
  others: string[];
  layers: string[];
  extents: [number, number, number, number];
}

let folder = '';

import { allSheets } from '../files/allSheets.ts';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'dxf-'));
});
afterAll(() => rmSync(folder, { recursive: true }));

function readByEzdxf(text: string): ReadBack {
  const file = join(folder, 'sheet.dxf');
  writeFileSync(file, text);
  return JSON.parse(execFileSync('/usr/bin/python3', ['-c', READER, file], { encoding: 'utf8' })) as ReadBack; // our own reader's output
}

/** Loops formed by lines and arcs of a layer whose ends coincide within 1e-6 mm; every end must be met exactly once. */
function loopsOfPieces(read: ReadBack, layer: string): number {
  const pieces = [...read.lines, ...read.arcs].filter(([name]) => name === layer).map(([, from, to]) => ({ from, to }));
  const key = ([x, y]: [number, number]) => `${Math.round(x * 1e6)},${Math.round(y * 1e6)}`;
  const met = new Map<string, number[]>();
  pieces.forEach(({ from, to }, index) => {
    for (const end of [from, to]) met.set(key(end), [...(met.get(key(end)) ?? []), index]);
  });
  for (const [at, ends] of met) if (ends.length !== 2) throw new Error(`${ends.length} ends at ${at} on ${layer}`);
  const seen = new Set<number>();
  let loops = 0;
  for (let start = 0; start < pieces.length; start++) {
    if (seen.has(start)) continue;
    loops++;
    const todo = [start];
    while (todo.length > 0) {
      const piece = pieces[todo.pop() ?? start];
      if (!piece) continue;
      for (const end of [piece.from, piece.to]) {
        for (const next of met.get(key(end)) ?? []) {
          if (!seen.has(next)) todo.push(next);
          seen.add(next);
        }
      }
    }
  }
  return loops;
}

const CASES: readonly (readonly [string, DxfOptions])[] = [
  ['R12, bulged outlines', {}],
  ['R12, lines and arcs', { outlines: 'pieces' }],
  ['R2000, bulged outlines', { version: 'R2000' }],
  ['R2000, lines and arcs', { version: 'R2000', outlines: 'pieces' }],
];

describe.each(CASES)('the test plate (SOURCES.md) read by ezdxf: %s', (_name, options) => {
  it('comes back true', () => {
    const text = writeDxf(testPlate(), options);
    const read = readByEzdxf(text);
    expect([read.errors, read.fixes]).toEqual([0, 0]);
    expect(read.version).toBe(options.version === 'R2000' ? 'AC1015' : 'AC1009');
    if (options.version === 'R2000') expect(read.units).toBe(4);
    expect(read.others).toEqual([]);
    expect(read.extents.map((value) => Math.round(value * 1e6) / 1e6)).toEqual([0, 0, 100, 60]);
    const holes = read.circles.filter(([layer]) => layer === 'HOLES');
    expect(holes.map(([, x, y, radius]) => ({ x, y, radius }))).toEqual(TEST_HOLES);
    if (options.outlines === 'pieces') {
      expect([loopsOfPieces(read, 'OUTLINE'), loopsOfPieces(read, 'OPENINGS')]).toEqual([1, 2]);
    } else {
      const closed = read.paths.filter(([layer, isClosed]) => isClosed && layer !== 'LETTERING');
      expect(closed).toHaveLength(3);
      const slot = closed.find(([, , points]) => points.some(([, , bulge]) => bulge === 1));
      expect(slot?.[2].map(([x, y]) => [x, y])).toEqual([
        [30, 40],
        [60, 40],
        [60, 48],
        [30, 48],
      ]);
      expect(read.paths.some(([layer, isClosed]) => layer === 'LETTERING' && isClosed)).toBe(false);
    }
    // The arc that the layer SCRIBE holds, ends by ezdxf: from 1.2 to 1.9 rad about (15, 15).
    const [arc] = read.arcs.filter(([layer]) => layer === 'SCRIBE');
    expect(arc?.[1][0]).toBeCloseTo(15 + 30 * Math.cos(1.2), 8);
    expect(arc?.[2][1]).toBeCloseTo(15 + 30 * Math.sin(1.9), 8);
  });

  it('has no exponent, comma or minus zero, and the same bytes again', () => {
    const text = writeDxf(testPlate(), options);
    expect(text).not.toMatch(/^\s*-?\d+\.\d*e/im);
    expect(text).not.toMatch(/\d,\d/);
    expect(text).not.toMatch(/^-0(\.0+)?$/m);
    expect(writeDxf(testPlate(), options)).toBe(text);
  });

  it('passes the pre-flight: at least five loops, no doubles, true extents', () => {
    const report = preflight(
      { name: 'plate.dxf', format: 'dxf', text: writeDxf(testPlate(), options) },
      { size: [100, 60], holes: [...TEST_HOLES] },
    );
    expect(report.problems).toEqual([]);
    expect(report).toMatchObject({ closedLoops: 6, openEnds: 0, doubles: 0, smallestHole: 4 });
  });
});

describe('read by dxf-parser', () => {
  it.each(CASES)('%s: holes, polylines and the unmirrored F', (_name, options) => {
    const dxf = new DxfParser().parseSync(writeDxf(testPlate(), options));
    const circles = dxf?.entities.filter((entity) => entity.type === 'CIRCLE') ?? [];
    const found = circles.map((entity) => {
      const { center, radius } = entity as unknown as { center: { x: number; y: number }; radius: number }; // the reader's ICircleEntity, not exported
      return { x: center.x, y: center.y, radius };
    });
    expect(found).toEqual(TEST_HOLES);
    if (options.outlines === 'pieces') return;
    const paths = (dxf?.entities ?? []).filter((entity) => entity.type === 'POLYLINE' || entity.type === 'LWPOLYLINE');
    const corners = paths.map((entity) => (entity as unknown as { vertices: { x: number; y: number }[] }).vertices); // its IPolylineEntity
    const letter = corners.find((vertices) => vertices.length === 10);
    const upright = letter?.filter(({ x }) => x === F_LEFT).map(({ y }) => y);
    expect(upright?.sort((a, b) => a - b)).toEqual([20, 41]);
  });
});

describe('the sheets of a plate', () => {
  const files = allSheets(everyConstruction()).filter(({ name }) => name.endsWith('.dxf'));

  it.each(files.map(({ name, text }) => [name, text]))('%s passes the audit of ezdxf', (name, text) => {
    const read = readByEzdxf(text);
    expect([read.errors, read.fixes, read.others.length]).toEqual([0, 0, 0]);
    const mirrored = name.includes('mirrored');
    const third = read.circles.find(([layer, , , radius]) => layer === 'HOLES' && radius === 0.75);
    // Two depths by hand (SOURCES.md): the third wheel at (16.65530, 23.49556) from the centre arbor at (40, 30).
    expect(third?.[1]).toBeCloseTo((mirrored ? -1 : 1) * (40 + 16.6553), 4);
    expect(third?.[2]).toBeCloseTo(30 + 23.49556, 4);
  });
});

describe('the pre-flight sees faults', () => {
  it('an open outline, a gap, a double, a wrong scale', () => {
    const plate = testPlate();
    const open = writeDxf({
      ...plate,
      layers: [
        {
          name: 'OUTLINE',
          shapes: [
            { kind: 'line', from: [0, 0], to: [100, 0] },
            { kind: 'line', from: [100.05, 0], to: [100.05, 60] },
            { kind: 'line', from: [100.05, 0], to: [100.05, 60] },
          ],
        },
      ],
    });
    expect(preflight({ name: 'open.dxf', format: 'dxf', text: open })).toMatchObject({ doubles: 1, openEnds: 2 });
    const inches = writeDxf(plate).replaceAll(/^(-?\d+\.\d+)$/gm, (_, value) => (Number(value) / 25.4).toFixed(10));
    const report = preflight({ name: 'inches.dxf', format: 'dxf', text: inches }, { size: [100, 60] });
    expect(report.problems.join()).toMatch(/millimetres read as inches/);
  });
});
