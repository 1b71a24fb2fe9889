import { expect, test } from 'vitest';
import { HOUSEHOLDS } from '../../db/src/demo/people.ts';
import { listViolations, overflowOf } from './support/checks.ts';
import { settle } from './support/crawl.ts';
import { demoOfFile } from './support/demo-of-file.ts';

const site = demoOfFile();
const NARROW = { viewport: { width: 320, height: 800 } };

/** Who has the first turn at an offer, as the book knows it and no page tells. */
async function firstAsked(offerId: string) {
  const [turn] = await site.database.admin`
    select h.name from book.offer_turn t join book.household h using (storehouse_id, household_id)
    where t.offer_id = ${offerId} and t.group_no = 1 order by h.name limit 1`;
  const [firstName = ''] = HOUSEHOLDS.find(({ name }) => name === turn?.name)?.personName.split(' ') ?? [];
  return { firstName, household: String(turn?.name) };
}

test('a household offers a container from its shelf, and a neighbour whose turn it is sees the price and takes it', async () => {
  const giver = await site.visit('member', NARROW);
  const shelf = await giver.request.get(
    `/api/storehouses/${site.root.split('/').at(-1)}/containers?limit=100`,
  );
  const { containers } = await shelf.json();
  const whole = containers.find(
    ({ grams, openedOn }: { grams: number; openedOn: string | null }) => grams > 0 && openedOn === null,
  );
  await giver.goto(`${site.root}/shelf/${whole.id}`);
  await settle(giver);
  await giver.getByRole('link', { name: 'Offer it to other members' }).click();
  await giver.getByRole('heading', { name: `Offer ${whole.food.nameEn} to other members` }).waitFor();
  await giver.getByLabel('Price').selectOption('named');
  await giver.getByRole('button', { name: 'Offer it' }).click();
  await giver.getByText('Type an amount, such as 4.50.').waitFor();
  expect([await listViolations(giver), await overflowOf(giver)]).toEqual([[], 0]);
  await giver.getByLabel(/^For each container/).fill('6.50');
  await giver.getByRole('button', { name: 'Offer it' }).click();
  await giver.getByText(/^One still offered until/).waitFor();
  await settle(giver);
  expect([await listViolations(giver), await overflowOf(giver)]).toEqual([[], 0]);
  const offerPage = new URL(giver.url()).pathname;

  const { firstName, household } = await firstAsked(offerPage.split('/').at(-1) ?? '');
  const taker = await site.visit({ firstName }, NARROW);
  const toOffer = taker.locator(`a[href="${offerPage}"]`);
  await taker.goto(site.root);
  await taker.getByText(/^Something is offered to you first\./).waitFor();
  await toOffer.waitFor();
  await taker.goto(`${site.root}/offers`);
  await settle(taker);
  expect([await listViolations(taker), await overflowOf(taker)]).toEqual([[], 0]);
  await toOffer.getByText(/^Your turn until/).waitFor();
  await toOffer.click();
  await taker.getByText('From a member').waitFor();
  await taker.getByText(/^You take one container and owe 6\.50 USD more/).waitFor();
  expect([await listViolations(taker), await overflowOf(taker)]).toEqual([[], 0]);
  await taker.getByRole('button', { name: 'Take it' }).click();
  await taker.getByText('You took it. Agree with whoever gave it when you fetch it.').waitFor();
  await taker.getByText('From Hollis').waitFor();
  await settle(taker);
  expect([await listViolations(taker), await overflowOf(taker)]).toEqual([[], 0]);

  await giver.reload();
  await giver.getByText(`${household} took it`).waitFor();
  await giver.getByText('All taken').waitFor();
}, 180_000);
