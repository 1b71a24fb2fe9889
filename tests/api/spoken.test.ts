import { afterAll, beforeAll, expect, test } from 'vitest';
import { openTestApp, type TestApp } from '../support/app.ts';
import { aBuy } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let dell: TestHousehold;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  dell = await aHousehold(app, storehouse, 'Dell');
});
afterAll(() => app.close());

const SPANISH = { 'Accept-Language': 'es-MX,es;q=0.9,en;q=0.8' };

test('a refusal is said in Spanish to whoever asks in Spanish, at its field too, with the same code', async () => {
  const supplier = { name: 'Mill', contact: 'x'.repeat(501), notes: 7 };
  const path = `${storehouse.path}/suppliers`;
  const english = await storehouse.coordinator.post(path, supplier);
  const spanish = await storehouse.coordinator.post(path, supplier, SPANISH);
  expect([spanish.status, spanish.body.code]).toEqual([english.status, english.body.code]);
  expect(english.headers.get('Content-Language')).toBeNull();
  expect(spanish.headers.get('Content-Language')).toBe('es');
  expect(spanish.body.title).toBe('Algo de lo enviado falta o no es posible.');
  expect(spanish.body.fields.map(({ field }: { field: string }) => field)).toEqual(
    english.body.fields.map(({ field }: { field: string }) => field),
  );
  expect(spanish.body.fields).toContainEqual({
    field: 'contact',
    message: 'Un contacto tiene como mucho 500 letras.',
  });
  expect(spanish.headers.get('Content-Type')).toContain('application/problem+json');
});

test('what needs me is said in Spanish with the names as they are, and a name that is a sentence stays', async () => {
  const name = 'Open the buy for pledges.';
  await aBuy(app, storehouse, { name, foods: ['wheat-hard-red-winter'] });
  const english = await dell.caller.get(`${storehouse.path}/next-steps`);
  const { body } = await dell.caller.get(`${storehouse.path}/next-steps`, SPANISH);
  expect(english.body.items[0].words).toBe(`${name} gathers pledges, and you have made none.`);
  expect(body.items[0]).toMatchObject({
    words: `${name} reúne promesas, y usted no tiene ninguna.`,
    buyName: name,
  });
});

test('whoever prefers English, or a language that nobody wrote, reads English', async () => {
  for (const language of ['en-GB,es;q=0.5', 'fr', '', 'estonian']) {
    const { body } = await app.as().get('/api/session', { 'Accept-Language': language });
    expect({ language, title: body.title }).toEqual({ language, title: 'Sign in first.' });
  }
});
