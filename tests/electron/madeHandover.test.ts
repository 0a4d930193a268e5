/** PDF sheets and the handover on the command line: read by poppler, unpacked by Python's own zip reader. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { depthwright, scratch } from './runCommand.ts';
import { twoDepths } from './twoDepths.ts';

let file: string;
beforeAll(() => {
  file = scratch('handed over.json');
  writeFileSync(file, twoDepths());
});

/** Width and height of the first page, points, as poppler reads them. */
function pageSize(path: string): readonly number[] {
  const words = execFileSync('pdfinfo', [path], { encoding: 'utf8' });
  return /Page size:\s+([\d.]+) x ([\d.]+)/.exec(words)?.slice(1).map(Number) ?? [];
}

test('sheets --pdf writes true-size pages on the paper asked for', async () => {
  const out = scratch('printed');
  const { code, out: says } = await depthwright(['sheets', file, '--out', out, '--pdf', '--paper', 'A3', '--json']);
  expect(code).toBe(0);
  const { files } = JSON.parse(says) as { files: string[] };
  const pdfs = files.filter((name) => name.endsWith('.pdf'));
  expect(pdfs).toContain('parts.pdf');
  // ISO 216: A3 is 297 × 420 mm; a point is 1/72 inch.
  const [width = 0, height = 0] = pageSize(join(out, 'parts.pdf'));
  expect((Math.min(width, height) * 25.4) / 72).toBeCloseTo(297, 1);
  expect((Math.max(width, height) * 25.4) / 72).toBeCloseTo(420, 1);
});

test('without --pdf no PDF is written, and an unknown paper is refused', async () => {
  const { out } = await depthwright(['sheets', file, '--out', scratch('texts'), '--json']);
  expect((JSON.parse(out) as { files: string[] }).files.filter((name) => name.endsWith('.pdf'))).toEqual([]);
  const { code, err } = await depthwright(['sheets', file, '--out', scratch('texts'), '--paper', 'foolscap']);
  expect(code).toBe(2);
  expect(err).toContain('A4, A3, Letter');
});

test('handover: the same zip twice to the byte, whole to another reader, the same files as a folder', async () => {
  const zips = [scratch('one.zip'), join(scratch('under'), 'two.zip')] as const;
  for (const zip of zips) expect((await depthwright(['handover', file, '--out', zip])).code).toBe(0);
  expect(readFileSync(zips[0]).equals(readFileSync(zips[1]))).toBe(true);

  const folder = scratch('as a folder');
  await depthwright(['handover', file, '--out', folder]);
  const unpacked = scratch('unpacked');
  mkdirSync(unpacked, { recursive: true });
  execFileSync('python3', ['-m', 'zipfile', '-e', zips[0], unpacked]);
  const contents = readFileSync(join(unpacked, 'contents.txt'), 'utf8');
  expect(contents).toContain('Local codes');
  const names = [...contents.matchAll(/^(\S.*?) +(\d+) bytes/gm)];
  expect(names.length).toBeGreaterThan(8);
  for (const [, name = '', size] of names) {
    const bytes = readFileSync(join(unpacked, name));
    expect(bytes.length).toBe(Number(size));
    expect(bytes.equals(readFileSync(join(folder, name)))).toBe(true);
  }
});
