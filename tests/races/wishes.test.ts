import { afterAll, beforeAll, expect, test } from 'vitest';
import { hashToken } from '../../apps/api/src/platform/session.ts';
import { openTestApp, type TestApp } from '../support/app.ts';
import { bodyOf } from '../support/buy.ts';
import { aHousehold, type TestHousehold } from '../support/household.ts';
import { aStorehouse, type TestStorehouse } from '../support/storehouse.ts';

let app: TestApp;
let storehouse: TestStorehouse;
beforeAll(async () => {
  app = await openTestApp();
  storehouse = await aStorehouse(app);
});
afterAll(() => app.close());

const KINDS = ['notice', 'landing-day', 'deposit-due', 'pledge-closing'] as const;
const ROUNDS = 8;

/** The address of a link as a letter holds it. */
async function aStopLink({ personId }: TestHousehold, kind: string): Promise<string> {
  const token = `${personId}-${kind}`;
  await app.admin`insert into book.stop_link (storehouse_id, token_hash, person_id, kind, made_at)
    values (${storehouse.storehouseId}, ${hashToken(token)}, ${personId}, ${kind}, now())`;
  return `/stop/${storehouse.storehouseId}/${token}`;
}
const follow = (link: string) => app.as().post(link, {});
const wishesOf = async ({ caller }: TestHousehold) =>
  bodyOf(await caller.get(`${storehouse.path}/telling-wishes`));
const offOf = ({ kinds }: { kinds: { kind: string; isOn: boolean }[] }) =>
  kinds.filter(({ isOn }) => !isOn).map(({ kind }) => kind);

test('the first links that one person follows, all at once, each stop their kind', async () => {
  for (let round = 0; round < ROUNDS; round += 1) {
    const reader = await aHousehold(app, storehouse, `Both ${round}`);
    const links = await Promise.all([...KINDS, 'all'].map((kind) => aStopLink(reader, kind)));
    const answers = await Promise.all(links.map(follow));
    expect(answers.map(({ status }) => status)).toEqual(links.map(() => 200));
    const wishes = await wishesOf(reader);
    expect(offOf(wishes).toSorted()).toEqual(KINDS.toSorted());
    expect(wishes).toMatchObject({ isEmailOn: false, version: links.length });
  }
});

test('what is wished for the first time at the moment of a link is either counted before it or refused', async () => {
  for (let round = 0; round < ROUNDS; round += 1) {
    const reader = await aHousehold(app, storehouse, `Wish ${round}`);
    const link = await aStopLink(reader, 'notice');
    const wish = {
      ...{ version: 0, language: 'es', timeZone: 'Europe/Berlin', fromHour: 7, toHour: 21, digestHour: null },
      ...{ isEmailOn: true, stoppedKinds: [] },
    };
    const path = `${storehouse.path}/telling-wishes`;
    const [edited, again] = await Promise.all([
      reader.caller.put(path, wish),
      reader.caller.put(path, { ...wish, language: 'en' }),
      follow(link),
    ]);
    const accepted = [edited, again].filter(({ status }) => status === 200);
    expect(accepted.length).toBeLessThan(2); // both were told the same version
    const wishes = await wishesOf(reader);
    expect(offOf(wishes)).toEqual(['notice']);
    if (accepted.length === 1)
      expect(wishes).toMatchObject({ timeZone: 'Europe/Berlin', language: accepted[0]?.body.language });
    for (const refused of [edited, again].filter(({ status }) => status !== 200))
      expect([refused.status, refused.body.code]).toEqual([409, 'stale-version']);
  }
});
