/** The window is closed: no Node, no network, no way out of the page, no permissions, no strangers on the bridge. */
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { expect } from '@playwright/test';
import { end, expectTitle, type Started, start, TOP, test } from './window.ts';

let started: Started;
let server: Server;
let hits = 0;
let outside: string;

test.beforeEach(async ({ places }) => {
  hits = 0;
  server = createServer((_request, response) => {
    hits++;
    response.writeHead(200, { 'access-control-allow-origin': '*' }).end('outside');
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  outside = `http://127.0.0.1:${(server.address() as AddressInfo).port}/`; // a TCP server has an address of this kind
  started = await start(places.data, places.file);
  await expectTitle(started, /Two depths/);
});
test.afterEach(async () => {
  await end(started);
  server.close();
});

test('the page has no Node, and an isolated, sandboxed world', async () => {
  const { app, page } = started;
  const seen = await page.evaluate(() => ({
    require: typeof (globalThis as { require?: unknown }).require,
    process: typeof (globalThis as { process?: unknown }).process,
    module: typeof (globalThis as { module?: unknown }).module,
    buffer: typeof (globalThis as { Buffer?: unknown }).Buffer,
    bridge: Object.values(window.depthwright ?? {}).every((value) => typeof value === 'function' || value === 'linux'),
  }));
  const nothing = 'undefined';
  expect(seen).toEqual({ require: nothing, process: nothing, module: nothing, buffer: nothing, bridge: true });
  const settings = await app.evaluate(({ BrowserWindow }) => {
    const contents = BrowserWindow.getAllWindows()[0]?.webContents as unknown as Record<
      'getLastWebPreferences',
      () => Record<string, unknown>
    >; // not in the published types
    return contents.getLastWebPreferences();
  });
  expect(settings).toMatchObject({
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    webSecurity: true,
    webviewTag: false,
    allowRunningInsecureContent: false,
  });
});

test('the page cannot change the bridge', async () => {
  const changed = await started.page.evaluate(() => {
    const bridge = window.depthwright as unknown as Record<string, unknown>; // as a hostile script would see it
    try {
      bridge['save'] = () => 'caught';
    } catch {
      // Strict code is told by an error; either way nothing may change.
    }
    return String(bridge['save']).includes('caught');
  });
  expect(changed).toBe(false);
});

test('nothing is fetched from outside, by page or engine', async () => {
  const { app, page } = started;
  const outcomes = await page.evaluate(async (address) => {
    const tries: Record<string, Promise<string>> = {
      fetch: fetch(address).then(
        () => 'reached',
        () => 'refused',
      ),
      image: new Promise((done) => {
        const image = new Image();
        image.onload = () => done('reached');
        image.onerror = () => done('refused');
        image.src = address;
      }),
      script: new Promise((done) => {
        const script = document.createElement('script');
        script.onload = () => done('reached');
        script.onerror = () => done('refused');
        script.src = address;
        document.head.append(script);
      }),
      socket: new Promise((done) => {
        try {
          const socket = new WebSocket(address.replace('http', 'ws'));
          socket.onopen = () => done('reached');
          socket.onerror = () => done('refused');
        } catch {
          done('refused');
        }
      }),
    };
    return Promise.all(Object.entries(tries).map(async ([name, outcome]) => `${name} ${await outcome}`));
  }, outside);
  expect(outcomes).toEqual(['fetch refused', 'image refused', 'script refused', 'socket refused']);
  // The content policy is one wall; the session behind it is another.
  const session = await app.evaluate(async ({ session: { defaultSession } }, address) => {
    return defaultSession.fetch(address).then(
      () => 'reached',
      () => 'refused',
    );
  }, outside);
  expect(session).toBe('refused');
  expect(hits).toBe(0);
});

test('scripts written into the page do not run', async () => {
  const ran = await started.page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'window.inlineRan = true';
    document.head.append(script);
    const button = document.createElement('button');
    button.setAttribute('onclick', 'window.inlineRan = true');
    document.body.append(button);
    button.click();
    button.remove();
    await new Promise((done) => setTimeout(done, 50));
    return 'inlineRan' in window;
  });
  expect(ran).toBe(false);
});

test('the page cannot be left, and opens no windows', async () => {
  const { app, page } = started;
  const before = page.url();
  await page.evaluate((address) => {
    window.open(address);
    location.href = address;
    const link = document.createElement('a');
    link.href = address;
    link.target = '_blank';
    link.click();
  }, outside);
  await page.evaluate(() => new Promise((done) => setTimeout(done, 300)));
  expect(page.url()).toBe(before);
  expect(await app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows().length)).toBe(1);
  expect(hits).toBe(0);
});

test('permissions are denied', async () => {
  const states = await started.page.evaluate(async () => {
    const devices = navigator.mediaDevices?.getUserMedia({ audio: true }).then(
      () => 'granted',
      () => 'denied',
    );
    const place = new Promise((done) => {
      navigator.geolocation.getCurrentPosition(
        () => done('granted'),
        () => done('denied'),
      );
    });
    return [await Notification.requestPermission(), (await devices) ?? 'denied', await place];
  });
  expect(states).toEqual(['denied', 'denied', 'denied']);
});

test('a request in an unknown shape, or by a strange handle, is refused', async () => {
  const outcomes = await started.page.evaluate(async () => {
    const bridge = window.depthwright as unknown as Record<string, (...args: unknown[]) => Promise<unknown>>;
    const tries = [
      bridge['save']?.({ handle: 'h', text: 7 }),
      bridge['save']?.({ handle: 'made-up', text: '{}' }),
      bridge['openRecent']?.({ path: '/etc/hostname' }),
      bridge['exportFiles']?.([{ name: 'a', content: 3 }]),
    ];
    return Promise.all(tries.map((each) => each?.then(JSON.stringify, (error: Error) => error.message)));
  });
  expect(outcomes[0]).toMatch(/does not know/);
  expect(outcomes[1]).toMatch(/never opened/);
  expect(outcomes[2]).toMatch(/does not know/);
  expect(outcomes[3]).toMatch(/does not know/);
});

test('another page, even in our own window, is not listened to', async () => {
  const { app } = started;
  const heard = await app.evaluate(
    async ({ BrowserWindow }, preload) => {
      const settings = { preload, sandbox: true, contextIsolation: true };
      const stranger = new BrowserWindow({ show: false, webPreferences: settings });
      await stranger.loadURL('depthwright://bench/index.html');
      const call = "window.depthwright.start().then(() => 'heard', (error) => error.message)";
      const outcome: unknown = await stranger.webContents.executeJavaScript(call);
      stranger.destroy();
      return outcome;
    },
    join(TOP, 'build', 'out', 'preload.cjs'),
  );
  expect(heard).toMatch(/may not ask/);
});

test('the page cannot name a path, whatever it hands over as a dropped file', async () => {
  const replies = await started.page.evaluate(
    async (path) => {
      const bridge = window.depthwright;
      const forged = Object.defineProperty(new File(['{}'], 'x.depthwright'), 'path', { value: path });
      window.dispatchEvent(new DragEvent('drop', { dataTransfer: new DataTransfer() }));
      const given: unknown[] = [forged, { path }, { name: 'x', path, __proto__: File.prototype }];
      const said: unknown[] = [];
      for (const file of given) {
        // A hostile script hands over what it likes.
        said.push(
          await bridge?.openDropped(file as File).catch((error: unknown) => ({ kind: 'failed', says: String(error) })),
        );
      }
      return said;
    },
    join(TOP, 'package.json'),
  );
  expect(replies).toHaveLength(3);
  for (const reply of replies) expect(reply).toMatchObject({ kind: 'failed' });
});
