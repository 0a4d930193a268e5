/** Which arguments are files, which addresses are files of the page, which window places can be reached. */
import { resolve } from 'node:path';
import { describe, expect, test, vi } from 'vitest';
import { requests } from '../../electron/bridge.ts';
import { filesNamed } from '../../electron/main/openingFiles.ts';
import { isOurPage, isOurs, PAGE } from '../../electron/main/pageAddress.ts';
import { fileOf } from '../../electron/main/pageFiles.ts';
import { isReachable } from '../../electron/main/windowPlace.ts';

// Outside Electron its module is a path; nothing of it is used by the functions tested here.
vi.mock('electron', () => ({ protocol: {}, screen: {} }));

describe('files among the arguments', () => {
  test('switches and folders are left out, missing files are kept', () => {
    const args = ['--no-sandbox', '.', 'tests', 'demo.depthwright', '', '--inspect=0', '/abs/x.json'];
    expect(filesNamed(args, process.cwd())).toEqual([resolve('demo.depthwright'), resolve('/abs/x.json')]);
  });

  test('after -- everything is a file', () => {
    expect(filesNamed(['--x', '--', '--odd.json'], '/somewhere')).toEqual([resolve('/somewhere/--odd.json')]);
  });
});

describe('addresses', () => {
  test.each([
    ['depthwright://bench/index.html', '/page/index.html'],
    ['depthwright://bench/assets/a%20b.js?v=1#x', '/page/assets/a b.js'],
    ['depthwright://bench/../../etc/passwd', '/page/etc/passwd'],
    ['depthwright://bench/..%2f..%2fetc/passwd', undefined],
    ['depthwright://bench/%2e%2e%2f%2e%2e%2fetc/passwd', undefined],
    ['depthwright://bench/%00', undefined],
    ['depthwright://bench/%zz', undefined],
    ['depthwright://other/index.html', undefined],
    ['file:///page/index.html', undefined],
    ['https://bench/index.html', undefined],
  ])('%s', (address, file) => {
    expect(fileOf('/page', address)).toBe(file);
  });

  test('only the page itself may ask', () => {
    expect(isOurPage(PAGE)).toBe(true);
    expect(isOurPage(`${PAGE}#steps`)).toBe(true);
    for (const other of ['depthwright://bench/other.html', 'https://bench/index.html', 'about:blank', '']) {
      expect(isOurPage(other)).toBe(false);
    }
    expect(isOurs('depthwright://bench.evil/index.html')).toBe(false);
  });
});

test('a window is reachable when its upper edge lies on a screen', () => {
  const screens = [
    { x: 0, y: 25, width: 1440, height: 875 },
    { x: 1440, y: 0, width: 1920, height: 1080 },
  ];
  const window = { x: 100, y: 60, width: 1280, height: 840 };
  expect(isReachable(window, screens)).toBe(true);
  expect(isReachable({ ...window, x: 2000 }, screens)).toBe(true);
  expect(isReachable({ ...window, x: 5000 }, screens)).toBe(false);
  expect(isReachable({ ...window, y: -300 }, screens)).toBe(false);
  expect(isReachable({ ...window, y: 2000 }, screens)).toBe(false);
  expect(isReachable(window, [])).toBe(false);
});

test('what the bridge refuses', () => {
  const bad: readonly [keyof typeof requests, unknown][] = [
    ['save', { handle: 'h', text: 1 }],
    ['save', { handle: '', text: '' }],
    ['save', { handle: 'h', text: '', path: '/x' }],
    ['open', { path: '/etc/passwd' }],
    ['openRecent', {}],
    ['openDropped', { path: 7 }],
    ['exportFiles', { files: [] }],
    ['exportFiles', { files: [{ name: 'a', content: { length: 3 } }] }],
    ['tellState', { handle: 'h', title: 't', unsaved: 'no', change: 1, possible: [] }],
    ['tellState', { handle: 'h', title: 't', unsaved: true, change: 0.5, possible: [] }],
    ['tellState', { handle: 'h', title: 't', unsaved: true, possible: ['format disk'] }],
    ['giveText', { ticket: 1.5 }],
  ];
  for (const [name, request] of bad) expect(requests[name].request.safeParse(request).success, name).toBe(false);
  expect(requests.save.request.safeParse({ handle: 'h', text: '{}' }).success).toBe(true);
  expect(requests.exportFiles.request.safeParse({ files: [{ name: 'a', content: new Uint8Array(2) }] }).success).toBe(
    true,
  );
});
