import type { Bench } from './open-bench.ts';
import type { Row } from './table.ts';

const ROWS = 2000;
const ROUNDS = 3;

/**
 * A sheet of 2,000 containers tried, which does all that posting does and takes it back, beside one INSERT into each of the
 * four tables that name them: no codes, no accounts, no entries, no answer for each row.
 */
export async function compareImport({
  port,
  admin,
  storehouseId,
  coordinatorCookie: cookie,
}: Bench): Promise<Row[]> {
  const row = (at: number) => `common;rice-white-long;pail-6-gallon-lined;1;${10_000 + at} g;2024-01`;
  const text = `Owner;Food;Container;Count;Mass each;Stored\n${Array.from({ length: ROWS }, (_, at) => row(at)).join('\n')}\n`;
  const body = JSON.stringify({
    files: [{ name: 'stock.csv', base64: Buffer.from(text).toString('base64') }],
  });
  const ours = async () => {
    const answer = await fetch(`http://127.0.0.1:${port}/api/storehouses/${storehouseId}/import-trials`, {
      method: 'POST',
      headers: { 'Content-Type': 'application/json', 'Idempotency-Key': crypto.randomUUID(), cookie },
      body,
    });
    const { isPossible } = (await answer.json()) as { isPossible?: boolean };
    if (!isPossible) throw new Error(`an import answered ${answer.status}`);
  };
  const bare = async () => {
    await admin`begin`;
    await admin`create temporary table sheet on commit drop as
      select uuidv7() as lot_id, uuidv7() as container_id, n from generate_series(1, ${ROWS}::int) n`;
    await admin`insert into book.unit (storehouse_id, unit_id, kind) select ${storehouseId}, lot_id, 'lot' from sheet`;
    await admin`insert into book.lot (storehouse_id, lot_id, food_id, origin_note, made_on)
      select ${storehouseId}, lot_id, food_id, 'bench', '2024-01-01' from sheet, book.food
      where storehouse_id = ${storehouseId} and food_code = 'rice-white-long'`;
    await admin`insert into book.vessel (storehouse_id, vessel_id, kind)
      select ${storehouseId}, container_id, 'container' from sheet`;
    await admin`insert into book.container (storehouse_id, container_id, container_code, container_kind_id, lot_id, packed_on)
      select ${storehouseId}, container_id, 'bench ' || n, container_kind_id, lot_id, '2024-01-01'
      from sheet, book.container_kind where storehouse_id = ${storehouseId} and kind_code = 'pail-6-gallon-lined'`;
    await admin`rollback`;
  };
  const figures: { ours: number; bare: number }[] = [];
  for (let round = 0; round < ROUNDS; round += 1)
    figures.push({ ours: await millisecondsOf(ours), bare: await millisecondsOf(bare) });
  return [
    { what: `import of ${ROWS} rows, tried`, figures: figures.map((pair) => pair.ours), unit: 'ms' },
    {
      what: 'its tables filled by bare INSERTs',
      figures: figures.map((pair) => (100 * pair.bare) / pair.ours),
      unit: '%',
    },
  ];
}

async function millisecondsOf(work: () => Promise<void>): Promise<number> {
  const startedAt = performance.now();
  await work();
  return performance.now() - startedAt;
}
