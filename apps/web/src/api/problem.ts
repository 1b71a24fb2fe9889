export type FieldProblem = { readonly field: string; readonly message: string };

export type ProblemFacts = {
  readonly code: string;
  readonly status: number;
  readonly title: string;
  readonly detail: string;
  readonly fields: readonly FieldProblem[];
};

/** What the server refused, or that it did not answer at all (code `offline`). */
export class ApiProblem extends Error {
  override readonly name = 'ApiProblem';
  readonly code: string;
  readonly status: number;
  readonly title: string;
  readonly fields: readonly FieldProblem[];
  /** What else the refusal told, such as the entry that is in the way. */
  readonly facts: Readonly<Record<string, unknown>>;

  constructor(facts: ProblemFacts, options: { cause?: unknown } = {}) {
    super(facts.detail || facts.title || facts.code, options);
    this.code = facts.code;
    this.status = facts.status;
    this.title = facts.title;
    this.fields = facts.fields;
    this.facts = { ...facts };
  }

  /** Whether the server said its last word, so that a retry would be another command. */
  get isAnswered(): boolean {
    return this.status >= 400 && this.status < 500;
  }
}

/** A proxy on the way may answer with something that is no problem document. */
export async function readProblem(answer: {
  status: number;
  json(): Promise<unknown>;
}): Promise<ProblemFacts> {
  const body = (await answer.json().catch(() => ({}))) as Partial<ProblemFacts>;
  return {
    ...body,
    code: body.code ?? 'unexpected',
    status: answer.status,
    title: body.title ?? '',
    detail: body.detail ?? '',
    fields: body.fields ?? [],
  };
}

/** A last word of the server. Everything else means: not yet, keep it and try again. */
export const isLastWord = (status: number): boolean =>
  status >= 400 && status < 500 && ![401, 408, 425, 429].includes(status);
