import { extract, parse } from 'letterparser';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { writeLetter } from '../../apps/api/src/features/letter/use-cases.ts';
import { withStorehouseTx } from '../../apps/api/src/platform/with-tx.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let storehouse: TestStorehouse;
let birchall: TestHousehold;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
  birchall = await aHousehold(app, storehouse, 'Birchall');
  catcher = await openCatcher();
});
beforeEach(async () => {
  catcher.mood = 'take';
  catcher.caught.length = 0;
  await app.admin`delete from book.work`;
});
afterAll(async () => {
  await catcher.close();
  await app.close();
});

const A_LETTER = {
  kind: 'pick-up',
  subject: 'Your pick-up is tomorrow',
  text: 'Bring your buckets at ten.\nThe Ashdowns hand out.',
  html: '<p>Bring your <b>buckets</b> at ten.</p>',
  stopUrl: 'https://book.alder.example/stop/abc',
};

const write = (wish: Partial<typeof A_LETTER> = {}, personId = birchall.personId) =>
  withStorehouseTx(app.outside, storehouse.storehouseId, (tx) =>
    writeLetter(tx, storehouse.storehouseId, { ...A_LETTER, ...wish, personId }),
  );

const stateOf = async (letterId: string) => {
  const [row] =
    await app.admin`select l.state, l.unsent_because as because, w.state as work, w.tries, w.last_reason as reason
    from book.letter l join book.work w on w.work_id = l.letter_id where letter_id = ${letterId}`;
  return row;
};

test('a letter is sent to the address of its person’s login, as text and as HTML', async () => {
  const letterId = await write();
  expect(await doWork(app, catcher)).toMatchObject({ done: 1 });
  const [caught] = catcher.caught;
  const read = extract(caught?.source ?? '');
  expect(read).toMatchObject({
    subject: 'Your pick-up is tomorrow',
    from: { name: 'Alder Row', address: 'book@alder.example' },
    to: [{ name: 'Birchall Person', address: 'birchall@example.org' }],
  });
  expect(read.text?.trim()).toBe(A_LETTER.text);
  expect(read.html?.trim()).toBe(A_LETTER.html);
  expect(parse(caught?.source ?? '').headers).toMatchObject({
    'Message-Id': `<${letterId}@alder.example>`,
    'Auto-Submitted': 'auto-generated',
    'List-Unsubscribe': '<https://book.alder.example/stop/abc>',
    'List-Unsubscribe-Post': 'List-Unsubscribe=One-Click',
  });
  expect(await stateOf(letterId)).toMatchObject({ state: 'sent', work: 'done', tries: 1 });
  expect(await doWork(app, catcher)).toMatchObject({ done: 0 });
});
