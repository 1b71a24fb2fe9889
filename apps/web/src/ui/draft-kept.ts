/** Of which issue a thing is; text where the thing has no number for it. */
export type Version = number | string;
type Fields = Readonly<Record<string, unknown>>;
/** What one row of a list or record is like that begins empty, by the field that holds it. */
export type Rows<Draft> = { readonly [Name in keyof Draft]?: unknown };

const isObject = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether a value that was kept is of the kind that the form holds now; of what begins as null only `row` tells. */
function fits(like: unknown, value: unknown, row?: unknown): boolean {
  if (like === null || like === undefined)
    return row === undefined || row === null || value === null || fits(row, value);
  if (Array.isArray(like)) {
    const one = row ?? like[0];
    return Array.isArray(value) && value.every((each) => one === undefined || fits(one, each));
  }
  if (!isObject(like)) return typeof value === typeof like;
  if (!isObject(value)) return false;
  const names = Object.keys(like);
  if (names.length === 0) return row === undefined || Object.values(value).every((each) => fits(row, each));
  return names.every((name) => (name in value ? fits(like[name], value[name]) : like[name] === undefined));
}

const isSame = (a: unknown, b: unknown) => JSON.stringify(a) === JSON.stringify(b);

/** Only what differs from how the form begins: what nobody typed over follows the book. */
export const changesTo = <Draft extends object>(start: Draft, typed: Partial<Draft>): Partial<Draft> =>
  Object.fromEntries(
    Object.entries(typed).filter(([name, value]) => !isSame(value, (start as Fields)[name])),
  ) as Partial<Draft>;

export const draftText = (version: Version, typed: object): string => JSON.stringify({ version, typed });

/**
 * What was typed before, so far as it may go on. Empty when it was begun from an older issue of the thing, so that it can't
 * cover what somebody else has saved since; when a field of it is of another kind than the form's now; and when it can't be
 * read at all. A field that the form no longer has is left out.
 */
export function readDraft<Draft extends object>(
  text: string | null,
  { start, version, rows = {} }: { start: Draft; version: Version; rows?: Rows<Draft> },
): Partial<Draft> {
  const kept = parsed(text);
  if (!isObject(kept) || !isObject(kept.typed) || kept.version !== version) return {};
  const known = Object.entries(kept.typed).filter(([name]) => name in start);
  const fitting = known.every(([name, value]) =>
    fits((start as Fields)[name], value, (rows as Fields)[name]),
  );
  return fitting ? changesTo(start, Object.fromEntries(known) as Partial<Draft>) : {};
}

function parsed(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null; // half written when the battery died
  }
}
