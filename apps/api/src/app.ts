import { Hono } from 'hono';
import { HTTPException } from 'hono/http-exception';
import { secureHeaders } from 'hono/secure-headers';
import type { Logger } from 'pino';
import { auditRoutes } from './features/audit/routes.ts';
import { bagRoutes } from './features/bag/routes.ts';
import { bankRoutes } from './features/bank/routes.ts';
import { bookingRoutes } from './features/booking/routes.ts';
import { buyRoutes } from './features/buy/routes.ts';
import { calendarRoutes, openCalendarRoutes } from './features/calendar/routes.ts';
import { callingOffRoutes } from './features/calling-off/routes.ts';
import { chargeRoutes } from './features/charge/routes.ts';
import { claimRoutes } from './features/claim/routes.ts';
import { closeRoutes } from './features/close/routes.ts';
import { contactRoutes } from './features/contact/routes.ts';
import { containerRoutes } from './features/container/routes.ts';
import { containerKindRoutes } from './features/container-kind/routes.ts';
import { containerTareRoutes } from './features/container-tare/routes.ts';
import { containerWishRoutes } from './features/container-wish/routes.ts';
import { coverageRoutes } from './features/coverage/routes.ts';
import { deliveryRoutes } from './features/delivery/routes.ts';
import { depositRoutes } from './features/deposit/routes.ts';
import { dutyRoutes } from './features/duty/routes.ts';
import { eaterRoutes } from './features/eater/routes.ts';
import { entryRoutes } from './features/entry/routes.ts';
import { equipmentRoutes } from './features/equipment/routes.ts';
import { equipmentUseRoutes } from './features/equipment-use/routes.ts';
import { exceptionRoutes } from './features/exception/routes.ts';
import { fillRoutes } from './features/fill/routes.ts';
import { foodRoutes } from './features/food/routes.ts';
import { fundPromiseRoutes } from './features/fund-promise/routes.ts';
import { giftRoutes } from './features/gift/routes.ts';
import { handoverRoutes } from './features/handover/routes.ts';
import { healthRoutes } from './features/health/routes.ts';
import { helperRoutes } from './features/helper/routes.ts';
import { holdRoutes } from './features/hold/routes.ts';
import { householdRoutes } from './features/household/routes.ts';
import { importRoutes } from './features/import/routes.ts';
import { inspectionRoutes } from './features/inspection/routes.ts';
import { intakeRoutes } from './features/intake/routes.ts';
import { invitationRoutes, joiningRoutes } from './features/invitation/routes.ts';
import { invoiceRoutes } from './features/invoice/routes.ts';
import { keepingRoutes } from './features/keeping/routes.ts';
import { keyingRoutes } from './features/keying/routes.ts';
import { kitchenRoutes } from './features/kitchen/routes.ts';
import { labelRoutes } from './features/label/routes.ts';
import { labelAheadRoutes } from './features/label-ahead/routes.ts';
import { landingRoutes } from './features/landing/routes.ts';
import { leavingRoutes } from './features/leaving/routes.ts';
import { lidRoutes } from './features/lid/routes.ts';
import { loanRoutes } from './features/loan/routes.ts';
import { maintenanceRoutes } from './features/maintenance/routes.ts';
import { moneyRoutes } from './features/money/routes.ts';
import { nextStepRoutes } from './features/next-step/routes.ts';
import { noticeRoutes } from './features/notice/routes.ts';
import { offerRoutes } from './features/offer/routes.ts';
import { orderRoutes } from './features/order/routes.ts';
import { packingSessionRoutes } from './features/packing-session/routes.ts';
import { pantryRoutes } from './features/pantry/routes.ts';
import { paperRoutes } from './features/paper/routes.ts';
import { periodRoutes } from './features/period/routes.ts';
import { personRoutes } from './features/person/routes.ts';
import { photoRoutes } from './features/photo/routes.ts';
import { pickUpRoutes } from './features/pick-up/routes.ts';
import { placeRoutes } from './features/place/routes.ts';
import { planRoutes } from './features/plan/routes.ts';
import { pledgeRoutes } from './features/pledge/routes.ts';
import { pourLogRoutes } from './features/pour-log/routes.ts';
import { privateReadRoutes } from './features/private-read/routes.ts';
import { quoteRoutes } from './features/quote/routes.ts';
import { reminderRoutes, stopRoutes } from './features/reminder/routes.ts';
import { rotationRoutes } from './features/rotation/routes.ts';
import { scaleCheckRoutes } from './features/scale-check/routes.ts';
import { seamRoutes } from './features/seam/routes.ts';
import { sessionRoutes } from './features/session/routes.ts';
import { sessionEquipmentRoutes } from './features/session-equipment/routes.ts';
import { setUpRoutes } from './features/set-up/routes.ts';
import { settlementRoutes } from './features/settlement/routes.ts';
import { shelfPriceRoutes } from './features/shelf-price/routes.ts';
import { splitRoutes } from './features/split/routes.ts';
import { statementRoutes } from './features/statement/routes.ts';
import { stockCountRoutes } from './features/stock-count/routes.ts';
import { storehouseRoutes } from './features/storehouse/routes.ts';
import { supplierRoutes } from './features/supplier/routes.ts';
import { supplyRoutes } from './features/supply/routes.ts';
import { takeAlongRoutes } from './features/take-along/routes.ts';
import { tinRoutes } from './features/tin/routes.ts';
import { traceRoutes } from './features/trace/routes.ts';
import { treatmentRoutes } from './features/treatment/routes.ts';
import { trialBalanceRoutes } from './features/trial-balance/routes.ts';
import { wayToKeepRoutes } from './features/way-to-keep/routes.ts';
import { withdrawalRoutes } from './features/withdrawal/routes.ts';
import { workRoutes } from './features/work/routes.ts';
import { writeOffRoutes } from './features/write-off/routes.ts';
import { yearOfMassRoutes } from './features/year-of-mass/routes.ts';
import type { AppEnv } from './platform/app-env.ts';
import type { Config } from './platform/config.ts';
import type { Outside } from './platform/context.ts';
import { docsRoutes } from './platform/docs.ts';
import { keepOutOfCaches, limitBody, refuseOtherOrigins } from './platform/guards.ts';
import { logFailure, logRequests } from './platform/log.ts';
import { memberOnly, signedIn } from './platform/member.ts';
import { methodsOf } from './platform/methods-of.ts';
import { newId } from './platform/new-id.ts';
import { Problem, problemBody } from './platform/problem.ts';
import { PROBLEMS } from './platform/problem-catalogue.ts';
import { inTheirLanguage } from './platform/spoken/say.ts';
import { toProblem } from './platform/to-problem.ts';
import { webRoutes } from './platform/web.ts';

/** Everything inside one storehouse. Features are mounted here, one noun a line. */
const insideStorehouse = new Hono<AppEnv>()
  .route('/', storehouseRoutes)
  .route('/', invitationRoutes)
  .route('/', dutyRoutes)
  .route('/', householdRoutes)
  .route('/', contactRoutes)
  .route('/', eaterRoutes)
  .route('/', planRoutes)
  .route('/', helperRoutes)
  .route('/', privateReadRoutes)
  .route('/', personRoutes)
  .route('/', leavingRoutes)
  .route('/', takeAlongRoutes)
  .route('/', equipmentRoutes)
  .route('/', bookingRoutes)
  .route('/', loanRoutes)
  .route('/', equipmentUseRoutes)
  .route('/', maintenanceRoutes)
  .route('/', scaleCheckRoutes)
  .route('/', containerTareRoutes)
  .route('/', foodRoutes)
  .route('/', containerKindRoutes)
  .route('/', settlementRoutes)
  .route('/', supplierRoutes)
  .route('/', supplyRoutes)
  .route('/', buyRoutes)
  .route('/', quoteRoutes)
  .route('/', pledgeRoutes)
  .route('/', callingOffRoutes)
  .route('/', fillRoutes)
  .route('/', depositRoutes)
  .route('/', orderRoutes)
  .route('/', withdrawalRoutes)
  .route('/', deliveryRoutes)
  .route('/', bagRoutes)
  .route('/', holdRoutes)
  .route('/', photoRoutes)
  .route('/', landingRoutes)
  .route('/', invoiceRoutes)
  .route('/', claimRoutes)
  .route('/', moneyRoutes)
  .route('/', bankRoutes)
  .route('/', tinRoutes)
  .route('/', writeOffRoutes)
  .route('/', fundPromiseRoutes)
  .route('/', shelfPriceRoutes)
  .route('/', entryRoutes)
  .route('/', statementRoutes)
  .route('/', trialBalanceRoutes)
  .route('/', splitRoutes)
  .route('/', chargeRoutes)
  .route('/', pickUpRoutes)
  .route('/', packingSessionRoutes)
  .route('/', sessionEquipmentRoutes)
  .route('/', pourLogRoutes)
  .route('/', closeRoutes)
  .route('/', nextStepRoutes)
  .route('/', noticeRoutes)
  .route('/', reminderRoutes)
  .route('/', paperRoutes)
  .route('/', keyingRoutes)
  .route('/', containerRoutes)
  .route('/', kitchenRoutes)
  .route('/', inspectionRoutes)
  .route('/', rotationRoutes)
  .route('/', intakeRoutes)
  .route('/', placeRoutes)
  .route('/', keepingRoutes)
  .route('/', pantryRoutes)
  .route('/', offerRoutes)
  .route('/', giftRoutes)
  .route('/', handoverRoutes)
  .route('/', yearOfMassRoutes)
  .route('/', containerWishRoutes)
  .route('/', coverageRoutes)
  .route('/', periodRoutes)
  .route('/', importRoutes)
  .route('/', traceRoutes)
  .route('/', treatmentRoutes)
  .route('/', labelRoutes)
  .route('/', labelAheadRoutes)
  .route('/', seamRoutes)
  .route('/', lidRoutes)
  .route('/', wayToKeepRoutes)
  .route('/', stockCountRoutes)
  .route('/', workRoutes)
  .route('/', auditRoutes)
  .route('/', exceptionRoutes)
  .route('/', calendarRoutes);

/** Everything from this host alone, in nobody's frame. */
const CONTENT_SECURITY_POLICY = {
  defaultSrc: ["'self'"],
  objectSrc: ["'none'"],
  baseUri: ["'none'"],
  formAction: ["'self'"],
  frameAncestors: ["'none'"],
};

/** Labels are read with the camera. Nothing here listens, asks where one is, or reaches for other things of a phone. */
const PERMISSIONS_POLICY = {
  camera: ['self'],
  ...{ microphone: [], geolocation: [], payment: [], usb: [], bluetooth: [], displayCapture: [] },
};

/** The whole application as a function of the outside: no port, no clock and no database of its own. */
export function createApp(parts: { outside: Outside; config: Config; log: Logger }) {
  const app = new Hono<AppEnv>();
  app.use(async (c, next) => {
    c.set('requestId', newId(parts.outside));
    c.set('outside', parts.outside);
    c.set('config', parts.config);
    c.set('log', parts.log);
    await next();
  });
  app.use(
    logRequests,
    secureHeaders({ contentSecurityPolicy: CONTENT_SECURITY_POLICY, permissionsPolicy: PERMISSIONS_POLICY }),
  );
  app.use('/api/*', keepOutOfCaches, inTheirLanguage);
  app.use(refuseOtherOrigins, limitBody);
  app.onError((error, c) => {
    const problem = asProblem(error);
    const { status } = PROBLEMS[problem.code];
    if (status >= 500) logFailure(c.var.log, c.var.requestId, problem.cause ?? problem);
    const { retryAfterSeconds } = problem.facts;
    return c.json(problemBody(problem, c.var.requestId), status, {
      'Content-Type': 'application/problem+json',
      ...(typeof retryAfterSeconds === 'number' ? { 'Retry-After': String(retryAfterSeconds) } : {}),
    });
  });
  app.notFound((c) => {
    const methods = methodsAt(c.req.path);
    if (methods.length === 0 || methods.includes(c.req.method)) throw new Problem('not-found');
    c.header('Allow', methods.join(', '));
    throw new Problem('method-not-allowed');
  });
  const routes = app
    .use('/api/storehouses/:storehouse/*', signedIn, memberOnly)
    .use('/api/storehouses/:storehouse', signedIn, memberOnly)
    .route('/api', healthRoutes)
    .route('/api', setUpRoutes)
    .route('/api', sessionRoutes)
    .route('/api', joiningRoutes)
    .route('/api', openCalendarRoutes)
    .route('/api/storehouses/:storehouse', insideStorehouse);
  routes.route('/', stopRoutes).route('/', docsRoutes(app)).route('/', webRoutes);
  const methodsAt = methodsOf(app.routes);
  return routes;
}

/** The type that the web's client is made from. */
export type AppType = ReturnType<typeof createApp>;

function asProblem(error: Error): Problem {
  if (!(error instanceof HTTPException)) return toProblem(error);
  if (error.status === 400) return new Problem('not-json', { cause: error });
  return new Problem('unexpected', { cause: error });
}
