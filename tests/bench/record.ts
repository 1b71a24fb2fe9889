export type Statement = { readonly text: string; readonly parameters: readonly unknown[] };

/** Everything that was sent, in order, by the connection it went down. */
export type Recorder = {
  hear(connection: number, text: string, parameters: unknown[]): void;
  /** What the last transaction of a request said, without what keeps it and the tenants apart. */
  listen(request: () => Promise<void>): Promise<Statement[]>;
};

type Sent = Statement & { readonly connection: number };

export function openRecorder(): Recorder {
  let sent: Sent[] = [];
  return {
    hear(connection, text, parameters) {
      sent.push({ connection, text, parameters });
    },
    async listen(request) {
      sent = [];
      await request();
      const begin = sent.findLast(({ text }) => /^\s*begin\b/i.test(text));
      if (!begin) throw new Error('the request began no transaction');
      const last = sent
        .slice(sent.indexOf(begin))
        .filter(({ connection }) => connection === begin.connection);
      // Keeping apart is the very difference that is to be measured.
      const statements = last.filter(({ text }) => !/^\s*(begin|commit|select set_config)\b/i.test(text));
      return statements.map(({ text, parameters }) => ({ text, parameters }));
    },
  };
}

/** The same statement about another payment: each value of the first is exchanged wherever it stands in a parameter. */
export function exchange(
  statement: Statement,
  values: readonly (readonly [from: string, to: string])[],
): Statement {
  const parameters = statement.parameters.map((parameter) => {
    if (typeof parameter !== 'string' && typeof parameter !== 'number') return parameter;
    const text = values.reduce((known, [from, to]) => known.replaceAll(from, to), String(parameter));
    return typeof parameter === 'number' ? Number(text) : text;
  });
  return { text: statement.text, parameters };
}
