import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may } from '../../platform/http.ts';
import { mayClaim, mayOffer } from './policy.ts';
import { presentOffer, presentOffers } from './present.ts';
import { claimWish, offerWish } from './schema.ts';
import { offerContainers, passOffer, readOffer, readOffers, takeBackOffer } from './use-cases.ts';
import { claimOffer } from './use-cases-claim.ts';

const TAG = 'Containers';
const ofHousehold = may(mayClaim, 'household-needed');
const ofGiver = may(mayOffer, 'household-needed');

export const offerRoutes = new Hono<AppEnv>()
  .get(
    '/offers',
    describe(TAG, 'What is offered to my household, what it offers and what it took'),
    ofGiver,
    async (c) => {
      const context = contextOf(c);
      return c.json(presentOffers(await readOffers(context), context));
    },
  )
  .get('/offers/:offer', describe(TAG, 'One offer, once it has come to me'), ofGiver, async (c) =>
    c.json(presentOffer(await readOffer(contextOf(c), idParam(c, 'offer')))),
  )
  .post(
    '/offers',
    describe(TAG, 'Offer whole containers to other members', [
      ...(['container-offered', 'container-opened', 'container-in-doubt', 'cost-unknown'] as const),
      'not-enough-left',
    ]),
    ofGiver,
    jsonBody(offerWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => offerContainers(context, c.req.valid('json')),
        present: presentOffer,
      }),
  )
  .post(
    '/offers/:offer/claims',
    describe(TAG, 'Take containers of an offer, at the price that was shown', [
      ...(['offer-taken', 'offer-over', 'not-your-turn', 'offer-is-yours', 'does-not-add-up'] as const),
      'container-in-doubt',
    ]),
    ofHousehold,
    jsonBody(claimWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => claimOffer(context, idParam(c, 'offer'), c.req.valid('json')),
        present: presentOffer,
      }),
  )
  .post(
    '/offers/:offer/pass',
    describe(TAG, 'Let my turn pass', ['not-your-turn', 'offer-over', 'offer-is-yours']),
    ofHousehold,
    async (c) => c.json(presentOffer(await passOffer(contextOf(c), idParam(c, 'offer')))),
  )
  .post(
    '/offers/:offer/withdrawal',
    describe(TAG, 'Take back what nobody has taken', ['offer-taken', 'offer-over']),
    ofGiver,
    async (c) => c.json(presentOffer(await takeBackOffer(contextOf(c), idParam(c, 'offer')))),
  );
