import type { Import } from './imports.ts';

/** Small general libraries that pure calculation may use. */
const PURE_LIBRARIES = new Set(['highs']);
const FEATURE = /^apps\/api\/src\/features\/([^/]+)\/(.+)$/;
/** What one feature may ask of another: its use cases, queries that it exports by name, shared pieces of a schema. */
const DOORS = new Set(['use-cases.ts', 'queries.ts', 'schema.ts']);

/** Says in a sentence what is wrong with one import, or nothing. */
export function judgeImport({ from, to, isType = false }: Import): string | null {
  return (
    judgePackage(from, to) ??
    judgeFeature(from, to) ??
    judgeLayer(from, to, isType) ??
    judgeLonelyLibrary(from, to) ??
    judgeDirection(from, to)
  );
}

function judgePackage(from: string, to: string): string | null {
  if (!from.startsWith('packages/')) return null;
  const isOwn = to.startsWith('packages/') || PURE_LIBRARIES.has(to);
  return isOwn ? null : `${from} is pure calculation and imports ${to}`;
}

function judgeFeature(from: string, to: string): string | null {
  const [, feature] = FEATURE.exec(from) ?? [];
  const [, other, file] = FEATURE.exec(to) ?? [];
  if (!feature || !other || !file || feature === other || DOORS.has(file)) return null;
  // A paper prints what the API answers, so that both say the same; it shapes nothing anew.
  if (feature === 'paper' && file === 'present.ts') return null;
  // Who may print a thing, or lend it, is who may see or keep it: one policy asks another, so that none spells its duties again.
  if (file === 'policy.ts' && fileOf(from) === 'policy.ts') return null;
  return `${from} reaches into ${to}; a feature goes through another's use cases or named queries`;
}

const fileOf = (path: string): string => FEATURE.exec(path)?.[2] ?? '';

function judgeLayer(from: string, to: string, isType: boolean): string | null {
  const file = fileOf(from);
  const target = fileOf(to);
  if (to === 'hono' || to.startsWith('hono/') || to === 'hono-openapi')
    return file !== '' && file !== 'routes.ts' ? `${from} knows HTTP; it stops at routes` : null;
  if (file === 'routes.ts' && /^queries/.test(target))
    return `${from} skips the use cases on its way to ${to}`;
  if (file === 'queries.ts' && target === 'use-cases.ts') return `${from} is beneath ${to}`;
  if (!isType && /^(policy|present)/.test(file) && /^(queries|use-cases|routes)/.test(target))
    return `${from} does no reading of its own, and imports ${to}`;
  return null;
}

function judgeLonelyLibrary(from: string, to: string): string | null {
  if (to === 'lucia' && from !== 'apps/api/src/platform/session.ts')
    return `${from} imports lucia, which stays behind platform/session.ts`;
  if (to === 'highs' && !from.startsWith('packages/solve/'))
    return `${from} imports highs, which stays in solve`;
  return null;
}

function judgeDirection(from: string, to: string): string | null {
  if (from.startsWith('db/') && to.startsWith('apps/') && !from.startsWith('db/src/demo/'))
    return `${from} is beneath ${to}`;
  if (from.startsWith('apps/api/src/platform/') && FEATURE.test(to)) return `${from} is beneath ${to}`;
  if (from.startsWith('apps/web/') && (to.startsWith('db/') || /^apps\/api\/src\/(?!index\.ts$)/.test(to)))
    return `${from} knows the API by its typed client only, and imports ${to}`;
  return null;
}

/** Words that reach for the clock or for chance, which come into pure calculation as arguments. */
const AMBIENT =
  /\b(Date\.now|new Date\(\)|Math\.random|performance\.now|process\.|globalThis\.crypto|crypto\.)/;

export function judgeAmbient(path: string, text: string): string | null {
  const found = AMBIENT.exec(text);
  return found ? `${path} reaches for ${found[1]}, which comes in as an argument` : null;
}

/** A transaction starts in a use case, and nowhere else in a feature. */
export function judgeTransaction(path: string, text: string): string | null {
  const file = fileOf(path);
  const starts = /\b(withTx|withLoginTx)\(|\.transaction\(/.exec(text);
  if (file === '' || file.startsWith('use-cases') || !starts) return null;
  return `${path} starts a transaction; that is for use cases`;
}

/** A query takes the transaction as its required first argument, so that it can't run outside one. */
export function judgeQueries(path: string, text: string): string[] {
  if (!/^queries/.test(fileOf(path))) return [];
  return [...text.matchAll(/export (?:async )?function (\w+)(?:<[^(]*>)?\(\s*([^),]*)/g)]
    .filter(([, , first]) => !/^tx: Tx$/.test((first ?? '').trim()))
    .filter(([whole]) => /async|Promise/.test(whole))
    .map(([, name]) => `${name} of ${path} does not take the transaction first`);
}
