/** What the page may not do: reach the network, leave itself, open windows, ask for devices. */
import { app, type Session, type WebContents, type WebPreferences } from 'electron';
import { isOurPage, isOurs } from './pageAddress.ts';

/** Settings of the window's page. The preload is the only code between it and the shell. */
export function pagePreferences(preload: string): WebPreferences {
  return {
    preload,
    contextIsolation: true,
    sandbox: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webSecurity: true,
    allowRunningInsecureContent: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    // The spelling checker fetches its dictionaries from the network.
    spellcheck: false,
  };
}

/** Switches of the page engine, before the app is ready: nothing is fetched behind the page's back. */
export function silenceEngine(): void {
  for (const feature of ['disable-background-networking', 'disable-component-update', 'no-pings']) {
    app.commandLine.appendSwitch(feature);
  }
}

/** What the page may load: its own files, and data that it made itself. */
function mayLoad(address: string): boolean {
  return isOurs(address) || address.startsWith('blob:') || address.startsWith('data:');
}

/** Closes a session: every request but our own is cancelled, every permission is denied. */
export function closeSession(session: Session): void {
  session.webRequest.onBeforeRequest((details, done) => {
    const developerTools = !app.isPackaged && details.url.startsWith('devtools:');
    done({ cancel: !mayLoad(details.url) && !developerTools });
  });
  session.setPermissionRequestHandler((_contents, _permission, done) => done(false));
  session.setPermissionCheckHandler(() => false);
  session.setDevicePermissionHandler(() => false);
  session.on('will-download', (event) => event.preventDefault());
}

/** Keeps any contents, present and future, on our page. */
export function stayOnPage(contents: WebContents): void {
  contents.setWindowOpenHandler(() => ({ action: 'deny' }));
  contents.on('will-attach-webview', (event) => event.preventDefault());
  contents.on('will-frame-navigate', (event) => {
    if (!isOurPage(event.url)) event.preventDefault();
  });
  contents.on('will-redirect', (event) => event.preventDefault());
}
