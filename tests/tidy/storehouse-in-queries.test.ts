import { expect, test } from 'vitest';
import { listFiles } from './source-files.ts';

const READS = /\.(from|update|delete)\(/;
/** Named itself, or by a condition of the file's own such as `isThis(pledge)`, which must name it in turn. */
const NAMES_STOREHOUSE = /storehouse/i;
const OWN_CONDITION = /\b((?:is|of|own)[A-Z]\w*)\(/g;

/** The top-level functions and constants of a file, each with its text. */
function pieces(text: string): { name: string; text: string }[] {
  return text.split(/\n(?=(?:export )?(?:async )?(?:function|const) )/).flatMap((piece) => {
    const [, name] = /^(?:export )?(?:async )?(?:function|const) (\w+)/.exec(piece) ?? [];
    return name ? [{ name, text: piece }] : [];
  });
}

/** The statements of a file of queries that leave the tenant to the policy alone. */
function unbound(text: string): string[] {
  const all = pieces(text);
  const binding = new Set(all.filter((piece) => NAMES_STOREHOUSE.test(piece.text)).map(({ name }) => name));
  const isBound = (piece: { text: string }) =>
    NAMES_STOREHOUSE.test(piece.text) ||
    [...piece.text.matchAll(OWN_CONDITION)].some(([, name]) => binding.has(name ?? ''));
  return all.filter((piece) => READS.test(piece.text) && !isBound(piece)).map(({ name }) => name);
}

const files = listFiles((path) => /^apps\/api\/src\/features\/[^/]+\/[\w-]*queries[\w-]*\.ts$/.test(path));

test('2h: every query says its storehouse itself, so that the policy is a one-time filter', () => {
  expect(files.length).toBeGreaterThan(30);
  expect(files.flatMap(({ path, text }) => unbound(text).map((name) => `${name} of ${path}`))).toEqual([]);
});

test('a query that leaves it to the policy is noticed', () => {
  const text =
    'const isThis = (id: string) => eq(pledges.pledgeId, id);\nexport async function findPledge(tx: Tx, id: string) {\n  return tx.select().from(pledges).where(isThis(id));\n}';
  expect(unbound(text)).toEqual(['findPledge']);
});
