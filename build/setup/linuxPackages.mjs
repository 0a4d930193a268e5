/** The unpacked program as a tar archive and as a Debian package, made with the system's own tools. */
import { chmodSync, copyFileSync, cpSync, mkdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { run, TOP, whereIs } from './run.mjs';

/** What the runtime links against, by the names of Debian 12 and later. */
const DEPENDS = [
  'libasound2 | libasound2t64',
  'libatk-bridge2.0-0 | libatk-bridge2.0-0t64',
  'libatspi2.0-0 | libatspi2.0-0t64',
  'libcups2 | libcups2t64',
  'libdrm2',
  'libgbm1',
  'libgtk-3-0 | libgtk-3-0t64',
  'libnss3',
  'libxkbcommon0',
  'xdg-utils',
];

/** Seconds since 1970 of the last change, so that the same sources give the same archive. */
async function changedAt() {
  const { code, words } = await run('git', ['log', '-1', '--format=%ct']);
  return code === 0 && /^\d+\s*$/.test(words) ? words.trim() : '0';
}

async function must(program, args, options) {
  const { code, words } = await run(program, args, options);
  if (code !== 0) throw new Error(`${program} failed:\n${words}`);
}

/** `NAME.tar.gz` of the unpacked folder. */
export async function tarOf(unpacked, folder, stem) {
  const file = join(folder, `${stem}.tar.gz`);
  const same = ['--sort=name', `--mtime=@${await changedAt()}`, '--owner=0', '--group=0', '--numeric-owner'];
  const inside = ['--transform', `s,^\\.,${stem},`, '-C', unpacked, '.'];
  await must('tar', [...same, '-czf', file, ...inside]);
  return file;
}

function desktopEntry() {
  return `[Desktop Entry]
Type=Application
Name=Depthwright
Comment=Planting and marking out of clockwork
Exec=/opt/depthwright/depthwright %f
Icon=depthwright
Terminal=false
Categories=Graphics;Engineering;
MimeType=application/x-depthwright;
`;
}

function mimeType() {
  return `<?xml version="1.0" encoding="UTF-8"?>
<mime-info xmlns="http://www.freedesktop.org/standards/shared-mime-info">
  <mime-type type="application/x-depthwright">
    <comment>Movement</comment>
    <sub-class-of type="application/json"/>
    <glob pattern="*.depthwright"/>
  </mime-type>
</mime-info>
`;
}

/** `NAME.deb` of the unpacked folder; undefined where the system has no tool for it. */
export async function debOf(unpacked, folder, stem) {
  if (!whereIs('dpkg-deb')) return undefined;
  const { version, description } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8'));
  const stage = join(folder, 'deb');
  rmSync(stage, { recursive: true, force: true });
  const at = (...names) => {
    mkdirSync(join(stage, ...names.slice(0, -1)), { recursive: true });
    return join(stage, ...names);
  };
  cpSync(unpacked, at('opt', 'depthwright'), { recursive: true, verbatimSymlinks: true });
  // The helper of the system's sandbox works only when it belongs to root and runs as root.
  chmodSync(at('opt', 'depthwright', 'chrome-sandbox'), 0o4755);
  symlinkSync('/opt/depthwright/depthwright', at('usr', 'bin', 'depthwright'));
  writeFileSync(at('usr', 'share', 'applications', 'depthwright.desktop'), desktopEntry());
  writeFileSync(at('usr', 'share', 'mime', 'packages', 'depthwright.xml'), mimeType());
  copyFileSync(
    join(TOP, 'build', 'icons', 'icon.png'),
    at('usr', 'share', 'icons', 'hicolor', '512x512', 'apps', 'depthwright.png'),
  );
  copyFileSync(join(TOP, 'LICENSE'), at('usr', 'share', 'doc', 'depthwright', 'copyright'));
  const control = [
    'Package: depthwright',
    `Version: ${version}`,
    'Architecture: amd64',
    'Maintainer: Depthwright <depthwright@localhost>',
    'Section: graphics',
    'Priority: optional',
    `Depends: ${DEPENDS.join(', ')}`,
    `Description: ${description ?? 'Planting and marking out of clockwork'}`,
  ];
  writeFileSync(at('DEBIAN', 'control'), `${control.join('\n')}\n`);
  const file = join(folder, `${stem}.deb`);
  const env = { SOURCE_DATE_EPOCH: await changedAt() };
  await must('dpkg-deb', ['--root-owner-group', '-Zxz', '-z1', '--build', stage, file], { env });
  rmSync(stage, { recursive: true, force: true });
  return file;
}
