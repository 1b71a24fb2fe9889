const ROWS_AT_A_TIME = 500;

/** Sends rows in parts, since a statement takes only so many values. */
export async function inParts<Row>(
  rows: readonly Row[],
  send: (part: Row[]) => PromiseLike<unknown>,
): Promise<void> {
  for (let from = 0; from < rows.length; from += ROWS_AT_A_TIME)
    await send(rows.slice(from, from + ROWS_AT_A_TIME));
}
