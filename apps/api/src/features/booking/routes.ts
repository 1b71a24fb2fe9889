import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { mayKeepEquipment } from '../equipment/use-cases.ts';
import { mayBook } from './policy.ts';
import { presentFreeTimes, presentOfItem, presentOwn, presentWaited } from './present.ts';
import { presentBooking } from './present-booking.ts';
import {
  acceptanceWish,
  bookingWish,
  freeTimesQuery,
  relayAnswer,
  serviceTimeWish,
  waitingWish,
} from './schema.ts';
import {
  acceptOffer,
  answerRelay,
  bookForHousehold,
  bookService,
  cancelBooking,
  readBookingsOfItem,
  readFreeTimes,
  readOwnBookings,
  stopWaiting,
  waitFor,
} from './use-cases.ts';
import { freeUnfetched } from './use-cases-unfetched.ts';

const TAG = 'Equipment';

export const bookingRoutes = new Hono<AppEnv>()
  .get(
    '/bookings',
    describe(TAG, 'What my household has booked, is asked for and waits for', ['household-needed']),
    async (c) => c.json(presentOwn(await readOwnBookings(contextOf(c)))),
  )
  .get(
    '/equipment/:item/free-times',
    describe(TAG, 'When a thing is free'),
    queryOf(freeTimesQuery),
    async (c) =>
      c.json(presentFreeTimes(await readFreeTimes(contextOf(c), idParam(c, 'item'), c.req.valid('query')))),
  )
  .get('/equipment/:item/bookings', describe(TAG, 'The bookings of a thing from now on'), async (c) =>
    c.json(presentOfItem(await readBookingsOfItem(contextOf(c), idParam(c, 'item')))),
  )
  .post(
    '/equipment/:item/bookings',
    describe(TAG, 'Book a thing', [
      ...(['equipment-taken', 'equipment-unfit', 'already-booked', 'relay-refused'] as const),
      'not-your-household',
    ]),
    may(mayBook, 'household-needed'),
    jsonBody(bookingWish),
    async (c) => {
      const booked = await bookForHousehold(contextOf(c), idParam(c, 'item'), c.req.valid('json'));
      return c.json(presentBooking(booked), 201);
    },
  )
  .post(
    '/equipment-service-times',
    describe(TAG, 'Take a piece out of use for its service or repair', ['equipment-taken']),
    may(mayKeepEquipment),
    jsonBody(serviceTimeWish),
    async (c) => c.json(presentBooking(await bookService(contextOf(c), c.req.valid('json'))), 201),
  )
  .post(
    '/bookings/:booking/cancelling',
    describe(TAG, 'Give a booked time back', ['booking-not-open', 'not-your-household']),
    may(mayBook, 'household-needed'),
    async (c) => c.json(presentBooking(await cancelBooking(contextOf(c), idParam(c, 'booking')))),
  )
  .post(
    '/bookings/:booking/acceptance',
    describe(TAG, 'Take a time that came free', ['booking-not-open', 'not-your-household']),
    may(mayBook, 'household-needed'),
    jsonBody(acceptanceWish),
    async (c) => {
      const accepted = await acceptOffer(contextOf(c), idParam(c, 'booking'), c.req.valid('json'));
      return c.json(presentBooking(accepted));
    },
  )
  .post(
    '/bookings/:booking/not-fetched',
    describe(TAG, 'Free what nobody fetched', ['booking-not-open']),
    may(mayKeepEquipment),
    async (c) => c.json(presentBooking(await freeUnfetched(contextOf(c), idParam(c, 'booking')))),
  )
  .post(
    '/bookings/:booking/relay-answer',
    describe(TAG, 'Say yes or no to handing on', ['relay-refused', 'booking-not-open', 'stale-version']),
    may(mayBook, 'household-needed'),
    jsonBody(relayAnswer),
    async (c) => {
      const answered = await answerRelay(contextOf(c), idParam(c, 'booking'), c.req.valid('json'));
      return c.json(presentBooking(answered));
    },
  )
  .post(
    '/equipment/:item/waiting',
    describe(TAG, 'Wait for a time that is taken', ['already-booked', 'already-waiting']),
    may(mayBook, 'household-needed'),
    jsonBody(waitingWish),
    async (c) => {
      const waited = await waitFor(contextOf(c), idParam(c, 'item'), c.req.valid('json'));
      return c.json(presentWaited(waited), 201);
    },
  )
  .delete(
    '/equipment-waiting/:waiting',
    describe(TAG, 'Wait no longer'),
    may(mayBook, 'household-needed'),
    async (c) => {
      await stopWaiting(contextOf(c), idParam(c, 'waiting'));
      return c.body(null, 204);
    },
  );
