import { changeTaste, useTaste } from '../text/taste.ts';

/** Each language in its own words, so that nobody has to read the other to find theirs. */
const NAMES = { en: 'English', es: 'Español' } as const;

/** One button, named after the language that it leads to. */
export function LanguageChoice() {
  const { language } = useTaste();
  const other = language === 'en' ? 'es' : 'en';
  return (
    <button
      type="button"
      className="btn quiet"
      lang={other}
      onClick={() => void changeTaste({ language: other })}
    >
      {NAMES[other]}
    </button>
  );
}
