import { Hono } from 'hono';
import type { AppEnv } from '../../platform/app-env.ts';
import { answerCsv } from '../../platform/csv.ts';
import { answerOnce, contextOf, describe, idParam, jsonBody, may, queryOf } from '../../platform/http.ts';
import { hasShelf } from './policy.ts';
import {
  presentFilled,
  presentOwnBag,
  presentShelf,
  presentShelved,
  presentShelvedKept,
  presentTreated,
  toCsvRow,
} from './present.ts';
import { bringIn, pour, pourInto, shelfQuery, treated, undoPour as undoPourSchema, useUp } from './schema.ts';
import {
  bringInStock,
  listOwnBags,
  listShelf,
  pourContainers,
  pourIntoContainer,
  readContainer,
  sayTreatment,
  undoPour,
  useContainer,
  useOwnBag,
} from './use-cases.ts';

const ofHousehold = may(hasShelf, 'household-needed');
const TAG = 'Containers';

export const containerRoutes = new Hono<AppEnv>()
  .get('/containers', describe(TAG, 'My containers'), ofHousehold, queryOf(shelfQuery), async (c) => {
    const query = c.req.valid('query');
    const shelf = await listShelf(contextOf(c), query);
    return query.format === 'csv'
      ? answerCsv(c, 'containers', shelf.rows.map(toCsvRow))
      : c.json(presentShelf(shelf));
  })
  .get('/own-bags', describe(TAG, 'The bags in which I own grams'), ofHousehold, async (c) =>
    c.json({ bags: (await listOwnBags(contextOf(c))).map(presentOwnBag) }),
  )
  .get('/containers/:container', describe(TAG, 'One of my containers'), ofHousehold, async (c) =>
    c.json(presentShelvedKept(await readContainer(contextOf(c), idParam(c, 'container')))),
  )
  .put(
    '/containers/:container/treatment',
    describe(TAG, 'Say what was done to one of my containers as it was packed'),
    ofHousehold,
    jsonBody(treated),
    async (c) => {
      const said = c.req.valid('json');
      return c.json(presentTreated(await sayTreatment(contextOf(c), idParam(c, 'container'), said)));
    },
  )
  .post(
    '/containers',
    describe(TAG, 'Fill new containers from my share of a bag', [
      'not-enough-left',
      'over-capacity',
      'bag-on-hold',
      'treatment-does-not-fit',
    ]),
    ofHousehold,
    jsonBody(pour),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => pourContainers(context, c.req.valid('json')),
        present: presentFilled,
      }),
  )
  .post(
    '/stock',
    describe(TAG, 'Record food that my household had before', ['over-capacity']),
    ofHousehold,
    jsonBody(bringIn),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => bringInStock(context, c.req.valid('json')),
        present: presentFilled,
      }),
  )
  .post(
    '/containers/:container/pours',
    describe(TAG, 'Pour more of the same lot into a container', [
      'another-lot',
      'label-used',
      'over-capacity',
      'not-enough-left',
    ]),
    ofHousehold,
    jsonBody(pourInto),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => pourIntoContainer(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentShelved,
      }),
  )
  .post(
    '/containers/:container/uses',
    describe(TAG, 'Take grams out of a container for good', ['not-enough-left', 'container-offered']),
    ofHousehold,
    jsonBody(useUp),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => useContainer(context, idParam(c, 'container'), c.req.valid('json')),
        present: presentShelved,
      }),
  )
  .post(
    '/bags/:bag/uses',
    describe(TAG, 'Take my own grams out of a bag for good', ['not-enough-left', 'bag-on-hold']),
    ofHousehold,
    jsonBody(useUp),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => useOwnBag(context, idParam(c, 'bag'), c.req.valid('json')),
        present: (left) => left,
      }),
  )
  .post(
    '/pours/:entry/undoing',
    describe(TAG, 'Put a pour back into its bag', ['cannot-reverse', 'already-reversed']),
    ofHousehold,
    jsonBody(undoPourSchema),
    async (c) =>
      answerOnce(c, {
        status: 201,
        run: (context) => undoPour(context, idParam(c, 'entry'), c.req.valid('json').reason),
        present: (entry) => entry,
      }),
  );
