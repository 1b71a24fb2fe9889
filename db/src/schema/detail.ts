/** One line about a table, view or other object: `owner` is the object's qualified name. Rows arrive in print order. */
export type Detail = { owner: string; line: string };

/** Puts each object's lines under its heading, in the order of the headings. */
export function gather(headings: readonly Detail[], ...details: readonly (readonly Detail[])[]): string[] {
  const linesByOwner = new Map(headings.map(({ owner, line }) => [owner, [line]]));
  for (const { owner, line } of details.flat()) linesByOwner.get(owner)?.push(`  ${line}`);
  return [...linesByOwner.values()].map((lines) => lines.join('\n'));
}
