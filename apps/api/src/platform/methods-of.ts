import { TrieRouter } from 'hono/router/trie-router';
import type { RouterRoute } from 'hono/types';

/**
 * Tells which methods an address answers, to say so to somebody who asked by another one. The web's files stand at
 * every address and are no answer to that.
 */
export function methodsOf(routes: readonly RouterRoute[]): (path: string) => string[] {
  const router = new TrieRouter<string>();
  for (const { method, path } of routes)
    if (method !== 'ALL' && !path.includes('*')) router.add('ALL', path, method);
  return (path) => {
    const methods = router.match('ALL', path)[0].map(([method]) => method);
    return [...new Set(methods.flatMap((method) => (method === 'GET' ? ['GET', 'HEAD'] : [method])))];
  };
}
