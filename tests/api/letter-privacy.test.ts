import { addDays } from '@sheafbook/units';
import { extract } from 'letterparser';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { enqueueEverywhere } from '../../apps/api/src/worker/run-work-once.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { type Catcher, openCatcher } from '../support/catcher.ts';
import { aSecretWorld, SECRETS } from '../support/secrets.ts';
import { aStorehouse } from '../support/storehouse.ts';
import { doWork } from '../support/work.ts';

let app: TestApp;
let catcher: Catcher;
beforeAll(async () => {
  app = await openTestApp();
  await aSecretWorld(app, await aStorehouse(app));
  catcher = await openCatcher();
}, 180_000);
afterAll(async () => {
  await catcher.close();
  await app.close();
});

test('no letter of six weeks holds a secret, be it the reader’s own, or names another household', async () => {
  const begin = app.clock.now.toISOString().slice(0, 10);
  for (let day = 0; day < 42; day += 1) {
    app.clock.now = new Date(`${addDays(begin, day)}T17:00:00Z`);
    await enqueueEverywhere(app.outside, 'remind');
    await doWork(app, catcher);
  }
  const names = await app.admin<{ name: string; email: string | null }[]>`
    select h.name, l.email from book.household h
    left join book.person p using (storehouse_id, household_id) left join door.login l using (login_id)`;
  expect(catcher.caught.length).toBeGreaterThan(30);
  expect(new Set(catcher.caught.map(({ to }) => to)).size).toBeGreaterThan(5);
  for (const { to, source } of catcher.caught) {
    const { subject = '', text = '', html = '' } = extract(source);
    const said = [subject, text, html].join('\n').replaceAll(/https?:\/\/\S+/g, '');
    expect(Object.entries(SECRETS).filter(([, secret]) => said.includes(secret))).toEqual([]);
    const own = names.filter(({ email }) => email === to).map(({ name }) => name);
    const others = names.map(({ name }) => name).filter((name) => !own.includes(name));
    expect([to, others.filter((name) => new RegExp(`\\b${name}\\b`).test(said))]).toEqual([to, []]);
  }
}, 240_000); // six weeks of letters, which a busy machine takes its time for
