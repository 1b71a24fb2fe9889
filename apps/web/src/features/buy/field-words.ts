import { problemsOf } from '../../ui/field.tsx';

/** What was refused, field by field, in the words of the server, which speaks the reader's language. */
export function fieldWordsOf(error: Error | null) {
  const problems = problemsOf(error);
  return {
    hasFields: Object.keys(problems).length > 0,
    wordsOf: (field: string): string | undefined => problems[field],
  };
}
