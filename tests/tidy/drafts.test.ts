import { parseAst } from 'rolldown/parseAst';
import { expect, test } from 'vitest';
import { listFiles, type SourceFile } from './source-files.ts';

type Node = Readonly<Record<string, unknown>> & { readonly type: string };

/** What is typed or chosen in; ticks are one tap, and are kept with the rest of their form. */
const isField = (tag: string): boolean => /^(input|select|textarea|\w*Field|Choice)$/.test(tag);

/** Fields that type into the memory of the page alone, which ends with its tab: by file and by what they type into. */
function listForgetful({ path, text }: SourceFile): string[] {
  const setters = new Map<string, string>();
  const found = new Set<string>();
  const walk = (value: unknown, visit: (node: Node) => void): void => {
    if (Array.isArray(value)) for (const item of value) walk(item, visit);
    if (typeof value !== 'object' || value === null || !('type' in value)) return;
    visit(value as Node);
    for (const part of Object.values(value)) walk(part, visit);
  };
  const tree = parseAst(text, { lang: 'tsx' });
  walk(tree, (node) => {
    const { id, init } = node as { id?: Node; init?: { callee?: { name?: unknown } } | null };
    if (node.type !== 'VariableDeclarator' || init?.callee?.name !== 'useState') return;
    const [state, setter] = (id?.elements ?? []) as ({ name?: unknown } | null)[];
    if (setter) setters.set(String(setter.name), String(state?.name));
  });
  walk(tree, (node) => {
    const { id, init } = node as { id?: { name?: unknown }; init?: Node | null };
    if (node.type !== 'VariableDeclarator' || init?.type !== 'ArrowFunctionExpression') return;
    walk(init, (inside) => {
      const state = inside.type === 'Identifier' ? setters.get(String(inside.name)) : undefined;
      if (state !== undefined) setters.set(String(id?.name), state); // `change`, which sets a part of it
    });
  });
  walk(tree, (node) => {
    const { name, attributes } = node as { name?: { name?: unknown }; attributes?: unknown };
    if (node.type !== 'JSXOpeningElement' || !isField(String(name?.name))) return;
    walk(attributes, (inside) => {
      const state = inside.type === 'Identifier' ? setters.get(String(inside.name)) : undefined;
      if (state !== undefined) found.add(`${path}: ${state}`);
    });
  });
  return [...found];
}

const web = 'apps/web/src';
/** Why a field may forget: its file under the features, and what it types into. */
const FORGETFUL: Readonly<Record<string, readonly string[]>> = {
  'a password, or a name typed to show that one means it': [
    ...['joining/invitation: password', 'joining/set-up: password', 'people/leaving: typed'],
    ...['people/password: currentPassword', 'people/password: newPassword', 'session/sign-in: form'],
  ],
  'looks for something in a list, or by its code': [
    ...['ageing/ageing: search', 'bank/lines: search', 'bank/lines: state', 'books/journal-search: words'],
    ...['books/owing: wanted', 'books/statements: wanted', 'buy/food-finder: search', 'food/foods: group'],
    ...['food/foods: wanted', 'handing-over/handing-over: wanted', 'landing/bag-list: wanted'],
    ...[
      'notices/notices: state',
      'notices/notices: typed',
      'paper/paper-links: text',
      'scan/find-label: isSent',
      'scan/find-label: typed',
    ],
    ...['review/traces: typed', 'shelf/shelf: wanted', 'trace/trace: typed'],
    ...['equipment/photos-of-item: part', 'equipment/use-page: order'],
    'offer/store-offers: foodId',
  ],
  'asks what would be, or from when to when, and sends nothing': [
    ...['bank/pay: bills', 'bank/pay: on', 'books/trial-balance: throughOn', 'buy/quotes: chosenId'],
    'equipment/is-free: asked',
    ...[
      'buy/quotes: typed',
      'review/exceptions: fromOn',
      'review/exceptions: toOn',
      'review/year: throughOn',
    ],
    ...['settlement/settlement-form: shown', 'way-to-keep/ways: mass', 'way-to-keep/ways: moisture'],
    ...['year-of-mass/year-of-food: of', 'label/print-sheet: start'],
  ],
  'one choice and nothing beside it; what is then filled in has a draft of its own': [
    ...[
      'books/bills: chosen',
      'books/deposits: chosen',
      'calendar/calendar: shown',
      'giving/facts-form: chosen',
    ],
    ...['container-kind/kind-forms: chosen', 'packing/bring-bag: chosen', 'people/neighbour: duty'],
    ...['packing/equipment-of-day: chosen'],
  ],
  'a file that the browser would not give back, and how that file is read': [
    ...['bank/columns-form: rest', 'bank/file: chosen', 'import/import: files', 'place/log-form: dayOrder'],
    ...['place/log-form: file', 'place/log-form: unit'],
  ],
  'kept in another way': [
    ...['label/print-sheet: sheet', 'landing/say-bag: text', 'paper/paper-links: changed'],
  ],
};

test('what is typed into a form is kept as a draft', () => {
  const screens = listFiles((path) => path.startsWith(`${web}/features/`) && path.endsWith('.tsx'));
  expect(screens.length).toBeGreaterThan(200);
  const found = screens.flatMap(listForgetful).map((at) => at.replace(`${web}/features/`, ''));
  const named = Object.values(FORGETFUL).flat();
  expect(found.toSorted()).toEqual(named.map((at) => at.replace(':', '.tsx:')).toSorted());
});

test('a field that forgets is named, whether it types by itself or by what stands between', () => {
  const screen = (text: string) => listForgetful({ path: 'a.tsx', text });
  const plain =
    'const [a, setA] = useState(""); const b = <Field onChange={(event) => setA(event.target.value)} />;';
  expect(screen(plain)).toEqual(['a.tsx: a']);
  const between =
    'const [d, setD] = useState({}); const change = (part) => setD({ ...d, ...part }); const b = <input onChange={change} />;';
  expect(screen(between)).toEqual(['a.tsx: d']);
  expect(screen('const { change } = useDraft("x", {}); const b = <Choice onChange={change} />;')).toEqual([]);
  expect(
    screen('const [on, setOn] = useState(false); const b = <button onClick={() => setOn(true)} />;'),
  ).toEqual([]);
});
