import { randomBytes } from 'node:crypto';
import { createApp, openLog, readConfig } from '@sheafbook/api';
import { isCode, readCode, spellCode } from '@sheafbook/units';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { HOURS } from '../support/packing.ts';
import { type Pdf, pdfOf, printed, readPdf } from '../support/pdf.ts';
import { aSharedBuy, type TestSharedBuy } from '../support/shared-buy.ts';
import { shelvesOf } from '../support/shelf.ts';
import { A_PASSWORD, aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let buy: TestSharedBuy;
let day: string;

beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  buy = await aSharedBuy(app, storehouse, { name: 'Autumn grain' });
  day = await aPackingDayOf(storehouse);
});
afterAll(() => app.close());

/** Every paper of a buy as its coordinator prints it, and the treasurer's list. */
const PAPERS: readonly {
  name: string;
  title: Record<string, string>;
  path: () => string;
  by?: 'treasurer';
}[] = [
  {
    name: 'buy sheet',
    title: { en: 'Buy sheet', es: 'Hoja de la compra' },
    path: () => `${buy.path}/papers/buy-sheet`,
  },
  {
    name: 'pledge slip',
    title: { en: 'Pledge slip', es: 'Hoja de promesa' },
    path: () => `${buy.path}/papers/pledge-slip`,
  },
  {
    name: 'quotes compared',
    title: { en: 'Quotes compared', es: 'Ofertas comparadas' },
    path: () => `${buy.path}/papers/quote-comparison`,
  },
  { name: 'order', title: { en: 'Order', es: 'Pedido' }, path: () => `${buy.path}/papers/order` },
  {
    name: 'landing sheet',
    title: { en: 'Landing sheet', es: 'Hoja de llegada' },
    path: () => `${buy.path}/papers/landing-sheet`,
  },
  {
    name: 'claim letter',
    title: { en: 'Claim', es: 'Reclamación' },
    path: () => `${storehouse.path}/claims/${buy.claims?.torn}/paper`,
  },
  {
    name: 'split sheet',
    title: { en: 'Split sheet', es: 'Hoja de reparto' },
    path: () => `${storehouse.path}/splits/${buy.splitIds.beans}/paper`,
  },
  {
    name: 'statement',
    title: { en: 'Statement', es: 'Extracto' },
    path: () => `${storehouse.path}/households/${buy.households.Ashdown.householdId}/statement/paper`,
  },
  {
    name: 'run sheet',
    title: { en: 'Run sheet', es: 'Hoja de la jornada' },
    path: () => `${day}/papers/run-sheet`,
  },
  {
    name: 'list of who owes',
    title: { en: 'Who owes', es: 'Quién debe' },
    path: () => `${storehouse.path}/balances/paper`,
    by: 'treasurer',
  },
];

/** A packing day of the coordinator's, on which its own household wants two cans of wheat. */
async function aPackingDayOf({ coordinator, path }: TestStorehouse): Promise<string> {
  const facts = { name: 'Canning day', place: 'the hall', ...HOURS };
  const { id } = bodyOf(await coordinator.post(`${path}/packing-sessions`, facts), 201);
  const { kinds } = await shelvesOf(app, storehouse);
  const [{ food }] = bodyOf(await coordinator.get(`${path}/own-bags`)).bags;
  const wish = { foodId: food.id, containerKindId: kinds['can-no-10'], treatment: 'none', containers: 2 };
  const wishes = [{ ...wish, gramsEach: 1000 }];
  bodyOf(await coordinator.put(`${path}/packing-sessions/${id}/wishes`, { wishes }));
  return `${path}/packing-sessions/${id}`;
}

const SIZES = { a4: [595.28, 841.89], letter: [612, 792] } as const;
const FRAME = {
  en: {
    number: /Paper no\. \d+/,
    printed: /Printed 2026-09-01 10:00, as of entry \d+/,
    language: 'English',
    page: 'Page',
    of: 'of',
    notes: 'Notes',
  },
  es: {
    number: /Papel n\.º \d+/,
    printed: /Impreso 2026-09-01 10:00, hasta el asiento \d+/,
    language: 'Español',
    page: 'Página',
    of: 'de',
    notes: 'Notas',
  },
} as const;

describe.for(PAPERS)('$name', ({ title, path, by }) => {
  const print = (query: string): Promise<Pdf> =>
    printed(by === 'treasurer' ? buy.treasurer : storehouse.coordinator, `${path()}?${query}`);

  for (const language of ['en', 'es'] as const)
    for (const size of ['a4', 'letter'] as const)
      for (const large of [false, true])
        test(`${language}, ${size}${large ? ', large' : ''}: every page says where it belongs`, async () => {
          const pdf = await print(`language=${language}&size=${size}&large=${large}`);
          const words = FRAME[language];
          const [short, long] = SIZES[size];
          expect(pdf.language).toBe(language);
          for (const [at, page] of pdf.pages.entries()) {
            expect([page.width, page.height].toSorted((a, b) => a - b)).toEqual([short, long]);
            for (const stands of ['Alder Row Storehouse', title[language], words.language, words.notes])
              expect(page.text).toContain(stands);
            expect(page.text).toContain(`${words.page} ${at + 1} ${words.of} ${pdf.pages.length}`);
            expect(page.text).toMatch(words.number);
            expect(page.text).toMatch(words.printed);
            const points = page.texts.map((text) => text.points);
            expect(Math.min(...points)).toBeGreaterThanOrEqual(large ? 16 : 11);
            // Inside the margins on both sides: nothing runs over the edge.
            expect(Math.max(...page.texts.map((text) => text.right))).toBeLessThanOrEqual(page.width - 41);
            expect(Math.min(...page.texts.map((text) => text.x))).toBeGreaterThanOrEqual(41);
            expect(Math.max(...page.texts.map((text) => text.y))).toBeLessThan(page.height - 15);
          }
        });

  test('has its fonts with it, is black, and its QR leads to the page of its code', async () => {
    const pdf = await print('');
    expect(pdf.fonts.map((font) => font.name.replace(/^[A-Z]{6}\+/, ''))).toEqual(
      expect.arrayContaining(['Fraunces-SemiBold', 'AtkinsonHyperlegibleNext-Regular']),
    );
    expect(pdf.fonts.every((font) => font.isEmbedded)).toBe(true);
    expect(pdf.colours).toEqual(['#000000']);
    const address = pdf.pages[0]?.qr ?? '';
    const [code = ''] = address.split('/').slice(-1);
    expect(isCode(code)).toBe(true);
    expect(address).toBe(`http://localhost/s/${storehouse.storehouseId}/papers/${code}`);
    for (const page of pdf.pages) {
      expect(page.qr).toBe(address);
      expect(page.text).toContain(spellCode(code));
    }
    expect(pdf.title).toBe(`${title.en} ${code}`);
  });

  test('is the same to the byte while book and clock stand still', async () => {
    const caller = by === 'treasurer' ? buy.treasurer : storehouse.coordinator;
    const [first, second] = [pdfOf(await caller.get(path())), pdfOf(await caller.get(path()))];
    expect(Buffer.from(second).equals(Buffer.from(first))).toBe(true);
  });
});

const codeOf = (pdf: Pdf): string => pdf.pages[0]?.qr.split('/').at(-1) ?? '';

test('a code leads back to what its paper is about', async () => {
  const code = codeOf(await printed(storehouse.coordinator, `${buy.path}/papers/landing-sheet`));
  const found = bodyOf(await storehouse.coordinator.get(`${storehouse.path}/papers/${code}`));
  expect(found).toMatchObject({
    code,
    kind: 'landing-sheet',
    buyId: buy.buyId,
    householdId: null,
    printedAt: '2026-09-01T15:00:00.000Z',
    printedBy: buy.households.Ashdown.personId,
  });
  const typed = encodeURIComponent(` ${spellCode(code).toLowerCase()}`);
  expect(bodyOf(await storehouse.coordinator.get(`${storehouse.path}/papers/${typed}`)).paperNo).toBe(
    found.paperNo,
  );
});

test.for(['AAAAA', 'ABCDE', 'hello', '%E2%80%8B'])('"%s" is no code of a paper here', async (code) => {
  const answer = await storehouse.coordinator.get(`${storehouse.path}/papers/${code}`);
  expect([answer.status, answer.body.code]).toEqual([404, 'thing-not-found']);
  expect(readCode('AAAAA')).toBe('AAAAA'); // a code by its check, but of no paper
});

test('a paper keeps its number while nothing is booked, and another person’s or a later one has its own', async () => {
  const path = `${buy.path}/papers/buy-sheet`;
  const first = codeOf(await printed(storehouse.coordinator, `${path}?size=a4`));
  expect(codeOf(await printed(storehouse.coordinator, `${path}?size=letter&language=es`))).toBe(first);
  expect(codeOf(await printed(buy.treasurer, path))).not.toBe(first);
  const before = await printed(storehouse.coordinator, path);
  bodyOf(
    await buy.treasurer.post(`${storehouse.path}/payments`, {
      householdId: buy.households.Dell.householdId,
      minorUnits: 100,
      till: 'bank',
    }),
    201,
  );
  const after = await printed(storehouse.coordinator, path);
  expect(codeOf(after)).not.toBe(first);
  const entryOf = ({ text }: Pdf) => Number(/as of entry (\d+)/.exec(text)?.[1]);
  expect(entryOf(after)).toBe(entryOf(before) + 1);
});

test.for([
  {
    what: 'a statement for two periods',
    two: ['from=2026-08-01&to=2026-08-31', 'from=2026-07-01&to=2026-07-31'],
    path: () => `${storehouse.path}/households/${buy.households.Dell.householdId}/statement/paper`,
  },
  {
    what: 'the gifts of two years',
    two: ['year=2026', 'year=2025'],
    path: () => `${storehouse.path}/gift-year/paper`,
  },
  {
    what: 'a pledge slip with and without its figures',
    two: ['blank=false', 'blank=true'],
    path: () => `${buy.path}/papers/pledge-slip`,
  },
])('$what are two papers, each with a number that it keeps', async ({ two, path }) => {
  const member = buy.households.Dell.caller;
  const codes = [];
  for (const query of [...two, ...two]) codes.push(codeOf(await printed(member, `${path()}?${query}`)));
  expect(codes.slice(2)).toEqual(codes.slice(0, 2));
  expect(new Set(codes).size).toBe(2);
});

test('what is asked for on paper is one of the choices', async () => {
  const path = `${buy.path}/papers/buy-sheet`;
  for (const [query, field] of [
    ['size=a3', 'size'],
    ['language=fr', 'language'],
    ['unit=st', 'unit'],
    ['large=big', 'large'],
  ] as const) {
    const answer = await storehouse.coordinator.get(`${path}?${query}`);
    expect(answer.status).toBe(400);
    expect(answer.body.fields.map((problem: { field: string }) => problem.field)).toEqual([field]);
  }
  const answer = await storehouse.coordinator.get(`${buy.path}/papers/poster`);
  expect([answer.status, answer.body.code]).toEqual([404, 'not-found']);
});

test('the server’s public address stands in the QR where one is set', async () => {
  const { db, sql, clock } = app;
  const outside = { db, sql, now: () => clock.now, randomBytes: (count: number) => randomBytes(count) };
  const config = readConfig({ PUBLIC_URL: 'https://alder.example/' });
  const elsewhere = createApp({ outside, config, log: openLog('silent') });
  const login = { email: 'coordinator@example.org', password: A_PASSWORD };
  const signIn = await elsewhere.request('/api/session', {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(login),
  });
  const cookie = signIn.headers.getSetCookie()[0]?.split(';')[0] ?? '';
  const answer = await elsewhere.request(`${buy.path}/papers/order`, { headers: { Cookie: cookie } });
  const pdf = await readPdf(new Uint8Array(await answer.arrayBuffer()));
  expect(pdf.pages[0]?.qr).toMatch(/^https:\/\/alder\.example\/s\/[0-9a-f-]{36}\/papers\/[A-Z2-9]{5}$/);
});

test('a paper is for members', async () => {
  const answer = await app.as().get(`${buy.path}/papers/order`);
  expect([answer.status, answer.body.code]).toEqual([401, 'not-signed-in']);
});
