/** `npm run package`: builds everything and packages the program for this system into build/release. */
import { ensureBundles } from './setup/bundles.mjs';
import { ensurePackages } from './setup/packages.mjs';
import { runPackage } from './setup/run.mjs';

try {
  await ensurePackages();
  const failures = await ensureBundles();
  if (failures.length > 0) throw new Error(failures.join('\n'));
  const args = ['--config', 'build/electron-builder.config.cjs', '--publish', 'never', ...process.argv.slice(2)];
  const { code } = await runPackage('electron-builder/cli.js', args, { show: true });
  process.exitCode = code === 0 ? 0 : 1;
} catch (error) {
  console.error(error instanceof Error ? error.message : error);
  process.exitCode = 1;
}
