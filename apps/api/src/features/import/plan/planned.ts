/** What a row does, in a code and its figures; the web says it in the reader's language. */
export type Effect = { readonly code: string } & Readonly<Record<string, string | number | boolean | null>>;

/** The effect of a row and what it makes. Without an effect the row has an error. */
export type Planned<Made> = { readonly effect?: Effect; readonly made?: Made };
