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

  constructor(facts: ProblemFacts, options: { cause?: unknown } = {}) {
    super(facts.detail || facts.title || facts.code, options);
    this.code = facts.code;
    this.status = facts.status;
    this.title = facts.title;
    this.fields = facts.fields;
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
    code: body.code ?? 'unexpected',
    status: answer.status,
    title: body.title ?? '',
    detail: body.detail ?? '',
    fields: body.fields ?? [],
  };
}
