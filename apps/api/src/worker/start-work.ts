import { EventEmitter } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { Logger, parseCronItems, type Runner, run } from 'graphile-worker';
import { z } from 'zod';
import { logFailure } from '../platform/log.ts';
import { carryOut, type Workshop } from './carry-out.ts';
import { type Liveness, openLiveness } from './liveness.ts';
import { enqueueEverywhere } from './run-work-once.ts';
import { PERIODIC } from './tasks.ts';

export type StartWorkOptions = {
  readonly workshop: Workshop;
  readonly appUrl: string;
  /** So many storehouses are served at once, each by one piece of work after another. */
  readonly concurrency?: number;
  /** How often the dead are looked for. */
  readonly sweepMilliseconds?: number;
};

export type Worker = { stop(): Promise<void> };

const POLL_MILLISECONDS = 2000;
const SWEEP_MILLISECONDS = 60_000;
const RESTART_MILLISECONDS = 1000;

/**
 * Does the work in the background until it is stopped; any number of processes may do so at once. When the library's
 * workers give up, as they do if the database goes away under them, new ones are started.
 */
export async function startWork(options: StartWorkOptions): Promise<Worker> {
  const liveness = openLiveness(options.appUrl);
  const { log } = options.workshop;
  await liveness.sweep();
  const sweep = () => liveness.sweep().catch((error: unknown) => logFailure(log, 'work-sweep', error));
  const sweeping = setInterval(sweep, options.sweepMilliseconds ?? SWEEP_MILLISECONDS);
  let isStopped = false;
  let shift = await openShift(options, liveness);
  const shifts = (async () => {
    while (!isStopped) {
      await shift.over;
      await shift.stop();
      if (isStopped) return;
      await wait(RESTART_MILLISECONDS);
      await sweep();
      shift = await openShift(options, liveness).catch((error: unknown) => {
        logFailure(log, 'work-start', error);
        return CLOSED;
      });
    }
  })();
  return {
    async stop() {
      isStopped = true;
      clearInterval(sweeping);
      await shift.stop();
      await shifts;
      await liveness.end();
    },
  };
}

/** One set of the library's workers, from their start until one of them gives up or they are stopped. */
type Shift = { readonly over: Promise<unknown>; stop(): Promise<void> };

const CLOSED: Shift = { over: Promise.resolve(), stop: () => Promise.resolve() };

async function openShift(options: StartWorkOptions, liveness: Liveness): Promise<Shift> {
  const { workshop, appUrl, concurrency = 4 } = options;
  const events = new EventEmitter();
  const broken = new Promise((resolve) => events.once('worker:fatalError', resolve));
  const runner = await run({
    connectionString: appUrl,
    concurrency,
    maxPoolSize: concurrency + 2,
    pollInterval: POLL_MILLISECONDS,
    noHandleSignals: true,
    logger: new Logger(() => (level, message) => {
      if (level === 'error' && !message.startsWith('Failed task')) workshop.log.warn({ queue: message });
    }),
    events,
    preset: { plugins: [announcing(liveness)] },
    taskList: {
      work: (payload) => takeOne(workshop, payload),
      everywhere: (payload) => enqueueEverywhere(workshop.outside, everywhere.parse(payload).task),
    },
    parsedCronItems: parseCronItems(PERIODIC.map(toCronItem)),
  });
  return { over: Promise.race([broken, settled(runner.promise)]), stop: () => stopOnce(runner) };
}

const settled = (promise: Promise<void>): Promise<void> => promise.catch(() => undefined);

/** The library throws when it has stopped by itself already. */
const stopOnce = (runner: Runner): Promise<void> => settled(Promise.resolve().then(() => runner.stop()));

/** A worker announces itself before it takes its first job. */
const announcing = (liveness: Liveness): GraphileConfig.Plugin => ({
  name: 'LivenessPlugin',
  version: '1.0.0',
  worker: { hooks: { startWorker: (_, { worker }) => liveness.announce(worker.workerId) } },
});

const one = z.object({ storehouseId: z.uuid(), workId: z.uuid() });
const everywhere = z.object({ task: z.string() });

/** The queue waits before the next try when this throws; why stands with the work itself. */
async function takeOne(workshop: Workshop, payload: unknown): Promise<void> {
  if ((await carryOut(workshop, one.parse(payload))) === 'later') throw new Error('later');
}

const toCronItem = ({ task, everyMinutes }: (typeof PERIODIC)[number]) => ({
  task: 'everywhere',
  match: everyMinutes === 60 ? '0 * * * *' : `*/${everyMinutes} * * * *`,
  identifier: `every ${task}`,
  payload: { task },
});
