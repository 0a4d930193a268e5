/** Files of the command line beside the usual sheets: pages as SVG, outlines of wheels, the drill program as the movement asks. */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import DxfParser from 'dxf-parser';
import { beforeAll, expect, test } from 'vitest';
import { depthwright, scratch } from './runCommand.ts';
import { twoDepths } from './twoDepths.ts';

let file: string;
beforeAll(() => {
  file = scratch('workshop files.json');
  writeFileSync(file, twoDepths());
});
const filesIn = (json: string): readonly string[] => (JSON.parse(json) as { files: string[] }).files;

test('sheets --pages writes each page as an SVG of the size of the paper', async () => {
  const out = scratch('pages');
  const answer = await depthwright(['sheets', file, '--out', out, '--pages', '--paper', 'Letter', '--json']);
  const pages = filesIn(answer.out).filter((name) => /-page-\d+\.svg$/.test(name));
  expect(pages.length).toBeGreaterThan(5);
  expect(filesIn(answer.out).some((name) => name.endsWith('.pdf'))).toBe(false);
  // US Letter is 8½ × 11 inches.
  const sizes = pages.map((name) =>
    /width="([\d.]+)mm" height="([\d.]+)mm"/.exec(readFileSync(join(out, name), 'utf8')),
  );
  for (const size of sizes) {
    const [short, long] = [Number(size?.[1]), Number(size?.[2])].sort((a, b) => a - b);
    expect(short).toBeCloseTo(8.5 * 25.4, 4);
    expect(long).toBeCloseTo(11 * 25.4, 4);
  }
});

test('cutting --out writes the outlines of the wheels; a reader that is not ours finds every tooth of one', async () => {
  const { wheels } = JSON.parse(readFileSync(file, 'utf8')) as { wheels: { id: string; teeth: number }[] };
  const [first] = wheels;
  if (!first) throw new Error('the movement has wheels');
  const all = await depthwright(['cutting', file, '--out', scratch('wheels'), '--json']);
  expect(all.code).toBe(0);
  expect(filesIn(all.out)).toHaveLength(3 * wheels.length);
  const out = scratch('one wheel');
  const one = await depthwright(['cutting', file, first.id, '--out', out, '--json']);
  const dxf = filesIn(one.out).find((name) => name.endsWith('.dxf')) ?? '';
  const entities = new DxfParser().parseSync(readFileSync(join(out, dxf), 'utf8'))?.entities ?? [];
  const edge = entities.find((entity) => entity.layer === 'OUTLINE');
  const vertices = edge && 'vertices' in edge ? (edge.vertices as { x: number; y: number }[]) : []; // a polyline
  const reach = vertices.map(({ x, y }) => Math.hypot(x, y));
  const middle = (Math.min(...reach) + Math.max(...reach)) / 2;
  // Going round, the edge leaves the inner half once for every tooth.
  const teeth = reach.filter((r, i) => r > middle && (reach.at(i - 1) ?? 0) <= middle).length;
  expect(teeth).toBe(first.teeth);
  const unknown = await depthwright(['cutting', file, 'nobody', '--out', out]);
  expect(unknown.code).toBe(2);
  expect(unknown.err).toContain('nobody');
});

test('the drill program on the command line follows the choices in the movement', async () => {
  const chosen = scratch('chosen.json');
  const movement = JSON.parse(twoDepths()) as object;
  writeFileSync(chosen, JSON.stringify({ ...movement, drilling: { units: 'inch', breakThrough: 2, spot: false } }));
  const out = scratch('drilled');
  const { out: says } = await depthwright(['sheets', chosen, '--out', out, '--json']);
  const programs = filesIn(says).filter((name) => name.endsWith('.ngc'));
  expect(programs.length).toBeGreaterThan(0);
  for (const name of programs) {
    const text = readFileSync(join(out, name), 'utf8');
    expect(text).toContain('G20');
    expect(text).not.toContain('SPOT');
  }
});
