import { useTaste } from '../../text/taste.ts';
import { type Problems, problemsOf } from '../../ui/field.tsx';

/**
 * What was refused, field by field. The server says it in English and exactly; in another language the page says what
 * that field takes, in its own words.
 */
export function useFieldWords(error: Error | null, own: Problems, other: string) {
  const { language } = useTaste();
  const problems = problemsOf(error);
  return {
    hasFields: Object.keys(problems).length > 0,
    wordsOf: (field: string): string | undefined => {
      const said = problems[field];
      if (said === undefined) return undefined;
      return language === 'en' ? said : (own[field] ?? other);
    },
  };
}
