/**
 * `npm run package`: builds everything and packages the program for this system into build/release.
 *
 * On Linux that is the unpacked folder, a tar archive and a Debian package, around the runtime that is to be had; which
 * one is said. `-- --try` installs the Debian package, takes a movement through it and removes it again. Any other
 * argument goes to electron-builder, which fetches tools of its own for AppImage, Windows and macOS.
 */
import { readFileSync, rmSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { ensureBundles } from './setup/bundles.mjs';
import { debOf, tarOf } from './setup/linuxPackages.mjs';
import { ensurePackages } from './setup/packages.mjs';
import { releaseRuntime } from './setup/releaseRuntime.mjs';
import { runPackage, TOP } from './setup/run.mjs';
import { tryPackage } from './setup/tryPackage.mjs';

const RELEASE = join(TOP, 'build', 'release');

async function builder(args, env) {
  const all = ['--config', 'build/electron-builder.config.cjs', '--publish', 'never', ...args];
  const { code } = await runPackage('electron-builder/cli.js', all, { show: true, env });
  if (code !== 0) throw new Error('electron-builder could not package the program; its own words stand above.');
}

async function linuxPackages() {
  const { dist, version: runtime, says } = await releaseRuntime();
  rmSync(join(RELEASE, 'linux-unpacked'), { recursive: true, force: true });
  await builder(['--linux', 'dir'], { ELECTRON_DIST: dist, ELECTRON_VERSION: runtime });
  const { version } = JSON.parse(readFileSync(join(TOP, 'package.json'), 'utf8'));
  const unpacked = join(RELEASE, 'linux-unpacked');
  // What lies in the runtime of the tests beside the runtime itself.
  for (const stray of ['resources/app', 'resources/app-update.yml', '.unpacked']) {
    rmSync(join(unpacked, stray), { recursive: true, force: true });
  }
  const stem = `depthwright-${version}-linux-x64`;
  const made = [await tarOf(unpacked, RELEASE, stem), await debOf(unpacked, RELEASE, stem)];
  console.log(`\nPackaged around ${says}`);
  for (const file of [unpacked, ...made].filter(Boolean)) {
    const { size } = statSync(file);
    console.log(`  ${relative(TOP, file)}${file === unpacked ? '/' : `  ${(size / 2 ** 20).toFixed(1)} MB`}`);
  }
  if (!made[1]) console.log('  no Debian package: this system has no dpkg-deb');
  console.log(
    'Configured and not built here: AppImage, Windows (nsis), macOS (dmg); their tools are fetched by electron-builder.',
  );
  return made[1];
}

try {
  const args = process.argv.slice(2);
  await ensurePackages();
  const failures = await ensureBundles();
  if (failures.length > 0) throw new Error(failures.join('\n'));
  const others = args.filter((arg) => arg !== '--try');
  if (others.length > 0 || process.platform !== 'linux') await builder(others, {});
  else {
    const deb = await linuxPackages();
    if (args.includes('--try')) await tryPackage(deb);
  }
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
