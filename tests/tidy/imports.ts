import { posix } from 'node:path';
import type { SourceFile } from './source-files.ts';

/** `isType`: only types come along, so nothing of the other file runs. */
export type Import = { readonly from: string; readonly to: string; readonly isType?: boolean };

const IMPORT =
  /(?:^|\n)\s*(?:import|export)\s(type\s)?(?:[^'";]*?\sfrom\s)?['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;

/** What each file imports: a path from the top for the project's own files, the bare name for all else. */
export function listImports(files: readonly SourceFile[]): Import[] {
  return files.flatMap(({ path, text }) =>
    [...text.matchAll(IMPORT)].map((match) => ({
      from: path,
      to: resolve(path, match[2] ?? match[3] ?? ''),
      isType: match[1] !== undefined,
    })),
  );
}

function resolve(from: string, specifier: string): string {
  if (specifier.startsWith('.')) return posix.join(posix.dirname(from), specifier);
  const own = /^@sheafbook\/([a-z]+)(\/tables)?$/.exec(specifier);
  if (!own) return specifier;
  const folder = { db: 'db', api: 'apps/api', web: 'apps/web' }[own[1] ?? ''] ?? `packages/${own[1]}`;
  return own[2] ? `${folder}/src/tables/index.ts` : `${folder}/src/index.ts`;
}

/** The circles of files that import each other, each circle once, named by its files. */
export function findCircles(imports: readonly Import[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to } of imports) next.set(from, [...(next.get(from) ?? []), to]);
  const done = new Set<string>();
  const circles: string[][] = [];
  const walk = (file: string, trail: readonly string[]): void => {
    const seenAt = trail.indexOf(file);
    if (seenAt >= 0) circles.push(trail.slice(seenAt));
    if (seenAt >= 0 || done.has(file)) return;
    for (const target of next.get(file) ?? []) walk(target, [...trail, file]);
    done.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return circles;
}
