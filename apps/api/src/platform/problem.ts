import { PROBLEMS, type ProblemCode } from './problem-catalogue.ts';
import { inSpanish } from './spoken/spanish.ts';

/** A field at fault: its path in the body, and what is wrong with it in a member's words. */
export type FieldProblem = {
  readonly field: string;
  readonly message: string;
  /** The same in Spanish, where it names something that has a name in each language. */
  readonly messageEs?: string;
};

/** A refusal: something a person asked for that can't be done. Answered as RFC 9457 problem details in one place. */
export class Problem extends Error {
  override readonly name = 'Problem';
  readonly code: ProblemCode;
  readonly facts: Readonly<Record<string, unknown>>;
  readonly fields: readonly FieldProblem[];

  /** `facts` become members of the body; `detail` says what is the matter this time. */
  constructor(
    code: ProblemCode,
    options: { detail?: string; fields?: readonly FieldProblem[]; cause?: unknown } & Record<
      string,
      unknown
    > = {},
  ) {
    const { detail, fields = [], cause, ...facts } = options;
    super(detail ?? PROBLEMS[code].title, cause === undefined ? {} : { cause });
    this.code = code;
    this.fields = fields;
    this.facts = facts;
  }
}

/** Refuses one field of the body. */
export function fieldProblem(code: ProblemCode, field: string, message: string): Problem {
  return new Problem(code, { detail: message, fields: [{ field, message }] });
}

/** Refuses, at a field where there is one, with a sentence that names something with a name in each language, said in the reader's. */
export function namingProblem(
  code: ProblemCode,
  {
    field,
    says,
    ...facts
  }: { field?: string; says: (language: 'en' | 'es') => string } & Record<string, unknown>,
): Problem {
  const [message, messageEs] = [says('en'), inSpanish(says('es'))];
  return new Problem(code, {
    ...{ ...facts, detail: message, detailEs: messageEs },
    fields: field === undefined ? [] : [{ field, message, messageEs }],
  });
}

/** What of a food or a container kind is named in a language. */
export const namedIn = (
  language: 'en' | 'es',
  { nameEn, nameEs }: { nameEn: string; nameEs: string },
): string => (language === 'es' ? nameEs : nameEn);

/** The body of RFC 9457: type, title, status, detail and instance, then our code, the fields and the facts. */
export function problemBody(problem: Problem, instance: string) {
  const { title, status } = PROBLEMS[problem.code];
  return {
    ...problem.facts,
    type: `/problems/${problem.code}`,
    code: problem.code,
    title,
    status,
    detail: problem.message,
    instance: `urn:uuid:${instance}`,
    fields: problem.fields,
  };
}
