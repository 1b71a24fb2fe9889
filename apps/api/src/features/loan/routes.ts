import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayLend, mayTakeMoney, seesDesk } from './policy.ts';
import { presentDesk, presentLoan, presentSwap } from './present.ts';
import { damageWish, handOnWish, handOutWish, loanQuery, swapWish, takeBackWish } from './schema.ts';
import {
  handOn,
  handOut,
  readDesk,
  readLoan,
  readLoansOfItem,
  readOwnLoans,
  readSwap,
  swapPiece,
  takeBack,
} from './use-cases.ts';
import { chargeDamage } from './use-cases-damage.ts';

const TAG = 'Equipment';

export const loanRoutes = new Hono<AppEnv>()
  .get(
    '/equipment-desk',
    describe(TAG, 'What is out, due, late, dirty, broken and waited for'),
    may(seesDesk),
    async (c) => c.json(presentDesk(await readDesk(contextOf(c)))),
  )
  .get(
    '/loans',
    describe(TAG, 'What my household has out, or has had', ['household-needed']),
    queryOf(loanQuery),
    async (c) => c.json({ loans: (await readOwnLoans(contextOf(c), c.req.valid('query'))).map(presentLoan) }),
  )
  .get('/loans/:loan', describe(TAG, 'One loan', ['not-your-household']), async (c) =>
    c.json(presentLoan(await readLoan(contextOf(c), idParam(c, 'loan')))),
  )
  .get('/equipment/:item/loans', describe(TAG, 'The loans of a thing, as far as one may see'), async (c) =>
    c.json({ loans: (await readLoansOfItem(contextOf(c), idParam(c, 'item'))).map(presentLoan) }),
  )
  .get(
    '/bookings/:booking/swap',
    describe(TAG, 'What a booking can be exchanged for', ['not-your-household']),
    may(mayLend, 'household-needed'),
    async (c) => c.json(presentSwap(await readSwap(contextOf(c), idParam(c, 'booking')))),
  )
  .post(
    '/bookings/:booking/swap',
    describe(TAG, 'Exchange the piece for another of its kind', ['equipment-taken', 'stale-version']),
    may(mayLend, 'household-needed'),
    jsonBody(swapWish),
    async (c) => {
      const booking = await swapPiece(contextOf(c), idParam(c, 'booking'), c.req.valid('json'));
      return c.json({ id: booking.bookingId, unitId: booking.equipmentUnitId, version: booking.version });
    },
  )
  .post(
    '/bookings/:booking/loan',
    describe(TAG, 'Hand out what is booked, its parts ticked', [
      ...(['booking-not-open', 'equipment-unfit', 'equipment-taken', 'not-your-household'] as const),
      'duty-missing',
    ]),
    may(mayLend, 'household-needed'),
    jsonBody(handOutWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => handOut(context, idParam(c, 'booking'), c.req.valid('json')),
        present: presentLoan,
      }),
  )
  .post(
    '/bookings/:booking/relay',
    describe(TAG, 'Hand straight on from one borrower to the next', [
      ...(['relay-refused', 'not-out', 'equipment-unfit', 'not-your-household'] as const),
    ]),
    may(mayLend, 'household-needed'),
    jsonBody(handOnWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => handOn(context, idParam(c, 'booking'), c.req.valid('json')),
        present: presentLoan,
      }),
  )
  .post(
    '/loans/:loan/return',
    describe(TAG, 'Take back what is out, its parts ticked', [
      ...(['not-out', 'not-enough-left', 'not-your-household', 'duty-missing'] as const),
    ]),
    may(mayLend, 'household-needed'),
    jsonBody(takeBackWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => takeBack(context, idParam(c, 'loan'), c.req.valid('json')),
        present: presentLoan,
      }),
  )
  .post(
    '/loans/:loan/damage',
    describe(TAG, 'Charge what is found damaged on a thing that is back, until it goes out again', [
      'damage-not-now',
    ]),
    may(mayTakeMoney),
    jsonBody(damageWish),
    (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => chargeDamage(context, idParam(c, 'loan'), c.req.valid('json')),
        present: presentLoan,
      }),
  );
