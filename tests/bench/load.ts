import { Agent, request } from 'node:http';

/** What one side of a comparison is asked for, again and again. */
export type Load = {
  readonly port: number;
  readonly path: string;
  readonly cookie: string;
  readonly clients: number;
  readonly milliseconds: number;
  /** Bodies of payments are made up as they go, so that no two are the same; without it the load is of GETs. */
  readonly payments?: { readonly householdIds: readonly string[]; readonly firstNumber: number };
};

export type LoadResult = { readonly requests: number; readonly perSecond: number; readonly p50: number };

/** Each client sends its next request when the answer to the last one is read. Any answer but a good one ends it all. */
async function run(load: Load): Promise<LoadResult> {
  const agent = new Agent({ keepAlive: true, maxSockets: load.clients });
  const times: number[] = [];
  let sent = 0;
  const startedAt = performance.now();
  const endsAt = startedAt + load.milliseconds;
  const client = async () => {
    while (performance.now() < endsAt) {
      const askedAt = performance.now();
      await ask(load, agent, sent++);
      times.push(performance.now() - askedAt);
    }
  };
  await Promise.all(Array.from({ length: load.clients }, client));
  const seconds = (performance.now() - startedAt) / 1000;
  agent.destroy();
  times.sort((a, b) => a - b);
  return {
    requests: times.length,
    perSecond: times.length / seconds,
    p50: times[Math.floor(times.length / 2)] ?? Number.NaN,
  };
}

function ask(load: Load, agent: Agent, position: number): Promise<void> {
  const { port, path, cookie } = load;
  const payment = load.payments && paymentOf(load.payments, position);
  const headers = {
    cookie,
    ...(payment && {
      'content-type': 'application/json',
      'content-length': Buffer.byteLength(payment.body),
      'idempotency-key': payment.key,
    }),
  };
  return new Promise((resolve, reject) => {
    const asked = request(
      { agent, port, path, headers, host: '127.0.0.1', method: payment ? 'POST' : 'GET' },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8').on('data', (part: string) => {
          text += part;
        });
        answer.on('end', () =>
          answer.statusCode && answer.statusCode < 300
            ? resolve()
            : reject(new Error(`${path} answered ${answer.statusCode}: ${text}`)),
        );
      },
    );
    asked.on('error', reject);
    asked.end(payment?.body);
  });
}

function paymentOf({ householdIds, firstNumber }: NonNullable<Load['payments']>, position: number) {
  const number = firstNumber + position;
  const body = {
    householdId: householdIds[position % householdIds.length],
    minorUnits: number,
    till: 'bank',
    note: '',
  };
  return { key: `payment-${number}`, body: JSON.stringify(body) };
}

// The load has a process of its own, so that it doesn't stand in the server's way more than a neighbour's phone would.
process.on('message', (load: Load) => {
  run(load).then(
    (result) => process.send?.({ result }),
    (error: unknown) => process.send?.({ error: String(error) }),
  );
});
