import postgres from 'postgres';
import { z } from 'zod';
import { CONSTRAINT_PROBLEMS } from './constraint-problems.ts';
import './issue-words.ts';
import { type FieldProblem, Problem } from './problem.ts';

/** Turns whatever was thrown into the refusal that a client may see. Anything unforeseen becomes a bare 500. */
export function toProblem(error: unknown): Problem {
  if (error instanceof Problem) return error;
  if (error instanceof z.ZodError) return new Problem('invalid-input', { fields: listFields(error.issues) });
  const refusal = findPostgresError(error);
  if (!refusal) return new Problem('unexpected', { cause: error });
  if (['40001', '40P01'].includes(refusal.code)) return new Problem('busy-retry', { cause: error });
  if (refusal.code === '22003') return new Problem('amount-too-large', { cause: error });
  const code = CONSTRAINT_PROBLEMS[refusal.constraint_name ?? ''] ?? 'unexpected';
  return new Problem(code, { cause: error });
}

/** Drizzle wraps what a statement throws; what COMMIT throws arrives bare. Looks in both places. */
export function findPostgresError(error: unknown): postgres.PostgresError | undefined {
  if (error instanceof postgres.PostgresError) return error;
  return error instanceof Error && error.cause !== undefined ? findPostgresError(error.cause) : undefined;
}

/** For `catch`: what a race runs into after the look beforehand passed. The guards of the database, told as one refusal. */
export const refusing =
  (constraints: ReadonlySet<string>, problem: (cause: unknown) => Problem) =>
  (error: unknown): never => {
    throw constraints.has(findPostgresError(error)?.constraint_name ?? '') ? problem(error) : error;
  };

type Issue = {
  readonly path?: readonly unknown[] | undefined;
  readonly message: string;
  readonly keys?: unknown;
};

/** Names each field at fault by its path, such as `offers.0.bagSize`; an unknown field is named itself. */
export function listFields(issues: readonly Issue[]): FieldProblem[] {
  return issues.flatMap((issue) => {
    const path = (issue.path ?? []).map((step) =>
      typeof step === 'object' && step !== null && 'key' in step ? String(step.key) : String(step),
    );
    const keys = Array.isArray(issue.keys) ? issue.keys.map(String) : null;
    if (keys)
      return keys.map((key) => ({ field: [...path, key].join('.'), message: 'There is no such field.' }));
    return [{ field: path.join('.'), message: issue.message }];
  });
}
