/**
 * The shell's end of the bridge, and the only file that knows `ipcMain`: it checks who asks and what is asked before
 * any handler sees it.
 */
import { ipcMain, type WebContents, type WebFrameMain } from 'electron';
import {
  type MessageName,
  type MessageOf,
  type ReplyOf,
  type RequestName,
  type RequestOf,
  requests,
} from '../bridge.ts';
import { isOurPage } from './pageAddress.ts';

export type Handlers = { readonly [Name in RequestName]: (request: RequestOf<Name>) => Promise<ReplyOf<Name>> };

/** What of an event decides whether it is listened to. */
interface Sender {
  readonly sender: WebContents;
  readonly senderFrame: WebFrameMain | null;
}

/** Whether a request comes from our page itself: its window, its main frame, its address. */
function isTrusted({ sender, senderFrame }: Sender, window: () => WebContents | undefined): boolean {
  if (sender !== window() || senderFrame === null || senderFrame !== sender.mainFrame) return false;
  return isOurPage(senderFrame.url);
}

/**
 * Serves all requests of the bridge.
 *
 * @param window contents of the one window that may ask
 */
export function serveRequests(handlers: Handlers, window: () => WebContents | undefined): void {
  const serve = <Name extends RequestName>(name: Name): void => {
    ipcMain.handle(name, async (event, raw: unknown) => {
      if (!isTrusted(event, window)) throw new Error(`"${name}" was asked by a page that may not ask.`);
      const parsed = requests[name].request.safeParse(raw);
      if (!parsed.success) throw new Error(`"${name}" was asked in a shape that the bridge does not know.`);
      // safeParse of a union of schemas loses which one it was; the name ties schema and handler together.
      return handlers[name](parsed.data as RequestOf<Name>);
    });
  };
  for (const name of Object.keys(requests)) serve(name as RequestName); // Object.keys forgets the type of its keys
}

/** Tells the page something; nothing happens when its window is gone. */
export function tellPage<Name extends MessageName>(
  window: WebContents | undefined,
  name: Name,
  message: MessageOf<Name>,
): void {
  if (window && !window.isDestroyed()) window.send(name, message);
}
