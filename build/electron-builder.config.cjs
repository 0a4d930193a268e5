/**
 * How the program is packaged: everything is in the bundles, so nothing of node_modules is carried along.
 *
 * ELECTRON_DIST and ELECTRON_VERSION put another runtime in place of the official one (for machines that cannot fetch
 * it); left out, electron-builder takes the version that package.json pins.
 */
const { ELECTRON_DIST, ELECTRON_VERSION } = process.env;

module.exports = {
  appId: 'org.depthwright.bench',
  productName: 'Depthwright',
  executableName: 'depthwright',
  copyright: 'MIT licence',
  directories: { output: 'build/release', buildResources: 'build/icons' },
  files: ['build/out/main.cjs', 'build/out/preload.cjs', 'build/out/renderer/**', 'package.json', '!node_modules/**'],
  extraFiles: [
    { from: 'LICENSE', to: 'LICENSE.txt' },
    { from: 'node_modules/dejavu-fonts-ttf/LICENSE', to: 'LICENSE-DejaVu.txt' },
    { from: 'demo-data', to: 'demo-data', filter: ['*.json'] },
  ],
  asar: true,
  npmRebuild: false,
  icon: 'build/icons/icon.png',
  fileAssociations: [{ ext: 'depthwright', name: 'Movement', description: 'Movement', mimeType: 'application/json' }],
  electronFuses: {
    runAsNode: false,
    enableNodeOptionsEnvironmentVariable: false,
    enableNodeCliInspectArguments: false,
    onlyLoadAppFromAsar: true,
    enableCookieEncryption: true,
    // Checked where the system's signature carries the digest (macOS, Windows); elsewhere without effect.
    enableEmbeddedAsarIntegrityValidation: true,
    // The program ships no snapshot of its own for the browser process.
    loadBrowserProcessSpecificV8Snapshot: false,
    // Older runtimes, which only tests use, do not know this one.
    ...(!ELECTRON_DIST && { grantFileProtocolExtraPrivileges: false }),
  },
  linux: { target: ['dir', 'AppImage'], category: 'Graphics', synopsis: 'Planting and marking out of clockwork' },
  mac: { target: ['dir', 'dmg'], category: 'public.app-category.graphics-design' },
  win: { target: ['dir', 'nsis'] },
  ...(ELECTRON_DIST && { electronDist: ELECTRON_DIST }),
  ...(ELECTRON_VERSION && { electronVersion: ELECTRON_VERSION }),
};
