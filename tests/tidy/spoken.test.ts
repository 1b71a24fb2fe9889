import { auditBook } from '@sheafbook/ledger';
import { SPLIT_RULES, splitByRule } from '@sheafbook/sharing';
import { fraction } from '@sheafbook/units';
import { parseAst } from 'rolldown/parseAst';
import { expect, test } from 'vitest';
import { inSpanish, SPANISH } from '../../apps/api/src/platform/spoken/spanish.ts';
import { listFiles, type SourceFile } from './source-files.ts';

type Node = Readonly<Record<string, unknown>> & { readonly type: string };

/** Calls whose words are for whoever builds on the API, reads its logs or runs a command, and not for a member. */
const FOR_MAKERS = new Set(['describe', 'assert', 'assertWhole', 'Error', 'StartRefusal', 'refuseUnless']);
/** Files whose words are no answers: commands, the document of the API, and what is written into the book's own notes. */
const NOT_SAID = [
  /-command\.ts$/,
  /audit-everything\.ts$/,
  /platform\/(docs|docs-page|http|config|log)\.ts$/,
  /platform\/spoken\//,
  /features\/audit\//,
  /features\/(paper|reminder)\/words\//, // a catalogue in both languages of its own
  /features\/calendar\/sources\//, // each kind of appointment with its words in both languages
  /features\/take-along\/present\.ts$/,
  /features\/bag\/receipt\.ts$/,
];

/** Every sentence that stands in a file: a capital first, more than one word, a stop at its end; `{}` where it differs. */
function listSentences({ text }: SourceFile): string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    if (typeof value !== 'object' || value === null || !('type' in value)) return;
    const node = value as Node;
    if (FOR_MAKERS.has((node.callee as { name?: string } | undefined)?.name ?? '')) return;
    if (node.type === 'TaggedTemplateExpression') return;
    const sentence = textOf(node);
    if (sentence !== undefined) {
      if (/^(\p{Lu}|\{\})/u.test(sentence) && / /.test(sentence) && /[.?]$/.test(sentence))
        found.push(sentence);
      return;
    }
    for (const part of Object.values(node)) walk(part);
  };
  walk(parseAst(text, { lang: 'ts' }));
  return found;
}

function textOf(node: Node): string | undefined {
  if (node.type === 'Literal' && typeof node.value === 'string') return node.value;
  if (node.type === 'TemplateLiteral')
    return (node.quasis as { value: { cooked: string } }[]).map(({ value }) => value.cooked).join('{}');
  if (node.type !== 'BinaryExpression' || node.operator !== '+') return undefined;
  const [left, right] = [textOf(node.left as Node), textOf(node.right as Node)];
  return left === undefined && right === undefined ? undefined : `${left ?? '{}'}${right ?? '{}'}`;
}

const files = listFiles(
  (path) =>
    path.startsWith('apps/api/src/') &&
    path.endsWith('.ts') &&
    !NOT_SAID.some((pattern) => pattern.test(path)),
);

test('every sentence that the server says has its Spanish', () => {
  const missing = files.flatMap((file) =>
    listSentences(file)
      .filter((sentence) => inSpanish(sentence.replaceAll('{}', '7')) === sentence.replaceAll('{}', '7'))
      .map((sentence) => `${file.path}: ${sentence}`),
  );
  expect(files.length).toBeGreaterThan(200);
  expect(missing).toEqual([]);
});

/** What is written into a household's record of who looked: the purposes, what they go with, and what helpers see. */
function listLooks({ text }: SourceFile): string[] {
  const found: string[] = [];
  const walk = (value: unknown): void => {
    if (Array.isArray(value)) for (const item of value) walk(item);
    if (typeof value !== 'object' || value === null || !('type' in value)) return;
    const node = value as Node;
    const { name } = (node.callee ?? {}) as { name?: string };
    if (name === 'noteHelpersRead') found.push(textOf((node.arguments as Node[])[2] as Node) ?? '');
    if (node.type === 'ObjectExpression') found.push(...looksIn(node.properties as Node[]));
    for (const part of Object.values(node)) walk(part);
  };
  walk(parseAst(text, { lang: 'ts' }));
  return found.filter((words) => words !== '');
}

function looksIn(properties: readonly Node[]): string[] {
  const said = (key: string) => {
    const property = properties.find(({ key: of }) => (of as { name?: string } | undefined)?.name === key);
    return property ? textOf(property.value as Node) : undefined;
  };
  const purpose = said('purpose');
  if (purpose === undefined) return [];
  return [purpose, said('what')].filter((words) => words !== undefined);
}

test('what a household reads of who looked, and what for, has its Spanish', () => {
  const looks = files.flatMap(listLooks);
  expect(looks.length).toBeGreaterThan(60);
  expect(looks.filter((words) => !(words in SPANISH))).toEqual([]);
});

test('each Spanish sentence says as many differing things as its English', () => {
  const count = (text: string) => text.split('{}').length;
  const uneven = Object.entries(SPANISH).filter(([english, spanish]) => count(english) !== count(spanish));
  expect(uneven).toEqual([]);
});

test('the sentence under a split is said in Spanish under every rule', () => {
  const claims = [30, 50, 7].map((claimUnits, at) => ({
    ...{ ownerId: `${at}`, seat: at + 1, claimUnits, pledgeOrder: at, stockUnits: at, carryUnits: at },
    dailyNeedUnits: fraction(at + 1),
  }));
  for (const rule of SPLIT_RULES)
    for (const [availableUnits, stepUnits] of [
      [61, 1],
      [61, 5],
      [87, 1],
      [90, 1],
    ] as const) {
      const { sentence } = splitByRule({ rule, availableUnits, stepUnits, claims });
      const spanish = inSpanish(sentence);
      const english = spanish.match(/\b(the|each|claim|claims|left|units|steps)\b/gi);
      expect({ sentence, spanish, english }).toEqual({ sentence, spanish, english: null });
    }
});

test('what differs stays as it is, unless it is a stage or a duty; what nobody wrote for a member stays too', () => {
  const toFix = 'Fix the buy: its bags are filled, the grams promised and the deposits asked for.';
  expect(inSpanish(`Winter grain: ${toFix}`)).toBe(`Winter grain: ${SPANISH[toFix]}`);
  expect(inSpanish(`Winter: hard grain: ${toFix}`)).toBe(`Winter: hard grain: ${SPANISH[toFix]}`);
  expect(inSpanish('Winter grain: At most 40 g.')).toBe('Winter grain: Como mucho 40 g.');
  expect(inSpanish('Winter grain: The buy is fixed; this can be done while it is gathering.')).toBe(
    'Winter grain: La compra está fijada; esto se puede hacer mientras está reuniendo promesas.',
  );
  expect(inSpanish('Winter grain: Ana’s own words.')).toBe('Winter grain: Ana’s own words.');
  expect(inSpanish('There is a buy called Winter grain already.')).toBe(
    'Ya hay una compra llamada Winter grain.',
  );
  expect(inSpanish('The buy is closed; this can be done while it is gathering or fixed.')).toBe(
    'La compra está cerrada; esto se puede hacer mientras está reuniendo promesas o fijada.',
  );
  expect(inSpanish('At most 40 g.')).toBe('Como mucho 40 g.');
  expect(inSpanish('At most 40.')).toBe('Como mucho 40.');
  expect(inSpanish('Ana’s own words. They stay.')).toBe('Ana’s own words. They stay.');
});

test('every check of the audit, and its figure, is said in Spanish', () => {
  const nothing = {
    units: [],
    accounts: [],
    entries: [],
    movements: [],
    buys: [],
    sessions: [],
    costLines: [],
    splits: [],
  };
  const nothingMore = { reruns: [], lots: [], containers: [], codes: [], pledges: [], fills: [], holds: [] };
  const nothingElse = { bankMatches: [], tinCounts: [], digests: [], bookings: [], loans: [] };
  const findings = auditBook({ ...nothing, ...nothingMore, ...nothingElse });
  expect(findings.length).toBeGreaterThan(15);
  for (const { invariant, figure } of findings)
    for (const english of [invariant, figure]) expect(inSpanish(english)).not.toBe(english);
});
