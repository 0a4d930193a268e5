/** The menus, by the conventions of each platform. Keys shown here belong to the page, which handles them itself. */
import { app, Menu, type MenuItemConstructorOptions } from 'electron';
import type { RecentFile, ShellCommand } from '../bridge.ts';

/** What the menus show as possible. */
export interface MenuState {
  readonly possible: ReadonlySet<ShellCommand>;
  readonly recent: readonly RecentFile[];
}

/** What the menus do. */
export interface MenuActions {
  readonly command: (command: ShellCommand) => void;
  readonly openRecent: (id: string) => void;
}

const SEPARATOR: MenuItemConstructorOptions = { type: 'separator' };

/** Label and key of each command; the keys are those of the platform where it has one for the purpose. */
const COMMANDS: Readonly<Record<ShellCommand, readonly [label: string, key?: string]>> = {
  new: ['New', 'CmdOrCtrl+N'],
  open: ['Open…', 'CmdOrCtrl+O'],
  save: ['Save', 'CmdOrCtrl+S'],
  saveAs: ['Save as…', 'CmdOrCtrl+Shift+S'],
  export: ['Export for the workshop…', 'CmdOrCtrl+E'],
  undo: ['Undo', 'CmdOrCtrl+Z'],
  redo: ['Redo', process.platform === 'win32' ? 'Ctrl+Y' : 'CmdOrCtrl+Shift+Z'],
  delete: ['Delete', 'Delete'],
  find: ['Find by name…', 'CmdOrCtrl+F'],
  fit: ['Fit the movement'],
  zoomIn: ['Nearer'],
  zoomOut: ['Farther'],
  paper: ['Paper'],
  layoutBlue: ['Layout blue'],
  bench: ['Bench'],
  levels: ['Levels'],
  steps: ['Steps'],
  sheets: ['Sheets'],
  keys: ['List of keys'],
};

/** The template, apart from Electron's own menu object so that it can be looked at in tests. */
export function menuTemplate(state: MenuState, actions: MenuActions, platform: string): MenuItemConstructorOptions[] {
  const isMac = platform === 'darwin';
  const item = (command: ShellCommand): MenuItemConstructorOptions => {
    const [label, accelerator] = COMMANDS[command];
    const enabled = state.possible.has(command);
    const click = (): void => actions.command(command);
    return { id: command, label, enabled, click, registerAccelerator: false, ...(accelerator && { accelerator }) };
  };
  const recent = state.recent.map(({ id, name, folder }) => ({
    label: `${name} (${folder})`,
    click: () => actions.openRecent(id),
  }));
  const file: MenuItemConstructorOptions[] = [
    item('new'),
    item('open'),
    { id: 'recent', label: 'Open recent', enabled: recent.length > 0, submenu: recent },
    SEPARATOR,
    item('save'),
    item('saveAs'),
    item('export'),
    SEPARATOR,
    isMac ? { role: 'close' } : { role: 'quit' },
  ];
  const edit: MenuItemConstructorOptions[] = [
    item('undo'),
    item('redo'),
    SEPARATOR,
    { role: 'cut' },
    { role: 'copy' },
    { role: 'paste' },
    item('delete'),
    { role: 'selectAll' },
    SEPARATOR,
    item('find'),
  ];
  const view: MenuItemConstructorOptions[] = [
    ...(['bench', 'levels', 'steps', 'sheets'] as const).map(item),
    SEPARATOR,
    ...(['fit', 'zoomIn', 'zoomOut'] as const).map(item),
    SEPARATOR,
    ...(['paper', 'layoutBlue'] as const).map(item),
    SEPARATOR,
    { role: 'togglefullscreen' },
    ...(app.isPackaged ? [] : [{ role: 'toggleDevTools' as const }]),
  ];
  return [
    ...(isMac ? [{ role: 'appMenu' as const }] : []),
    { label: '&File', submenu: file },
    { label: '&Edit', submenu: edit },
    { label: '&View', submenu: view },
    ...(isMac ? [{ role: 'windowMenu' as const }] : []),
    {
      label: '&Help',
      role: 'help',
      submenu: [item('keys'), ...(isMac ? [] : [SEPARATOR, { role: 'about' as const }])],
    },
  ];
}

/** Puts the menus up. */
export function showMenu(state: MenuState, actions: MenuActions): void {
  Menu.setApplicationMenu(Menu.buildFromTemplate(menuTemplate(state, actions, process.platform)));
}
