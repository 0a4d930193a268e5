/** A page of a running engine, driven over its debugging port with real keys and pointers (Chrome DevTools Protocol). */
import WebSocket from 'ws';

/** Joins the first page that the engine shows on this port. Throws while there is none. */
export async function enginePage(port) {
  const targets = await (await fetch(`http://127.0.0.1:${port}/json/list`)).json();
  const page = targets.find(({ type }) => type === 'page');
  if (!page) throw new Error('The engine shows no page yet.');
  const socket = new WebSocket(page.webSocketDebuggerUrl);
  await new Promise((done, fail) => {
    socket.once('open', done);
    socket.once('error', fail);
  });
  const waiting = new Map();
  let last = 0;
  socket.on('message', (data) => {
    const { id, result, error } = JSON.parse(String(data));
    const call = waiting.get(id);
    waiting.delete(id);
    if (error) call?.fail(new Error(error.message));
    else call?.done(result);
  });
  const send = (method, params = {}) =>
    new Promise((done, fail) => {
      last++;
      waiting.set(last, { done, fail });
      socket.send(JSON.stringify({ id: last, method, params }));
    });
  return {
    /** Value of an expression in the page. */
    value: async (expression) => (await send('Runtime.evaluate', { expression, returnByValue: true })).result.value,
    /** A key as it is pressed; `control` with the control key held. */
    async press(key, { control = false } = {}) {
      const code = `Key${key.toUpperCase()}`;
      const virtual = key.toUpperCase().charCodeAt(0);
      const common = { key, code, windowsVirtualKeyCode: virtual, modifiers: control ? 2 : 0 };
      await send('Input.dispatchKeyEvent', { type: 'keyDown', ...common, ...(control ? {} : { text: key }) });
      await send('Input.dispatchKeyEvent', { type: 'keyUp', ...common });
    },
    async click(x, y) {
      await send('Input.dispatchMouseEvent', { type: 'mouseMoved', x, y });
      const press = { x, y, button: 'left', buttons: 1, clickCount: 1 };
      await send('Input.dispatchMouseEvent', { type: 'mousePressed', ...press });
      await send('Input.dispatchMouseEvent', { type: 'mouseReleased', ...press, buttons: 0 });
    },
    close: () => socket.close(),
  };
}
