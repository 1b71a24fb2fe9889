import { changeTaste, useTaste, useText } from '../../text/taste.ts';
import { Choice } from '../../ui/field.tsx';

/** How this phone shows things; kept on it, and nobody else's concern. */
export function TasteForm() {
  const t = useText();
  const taste = useTaste();
  return (
    <section className="stack">
      <h2>{t.onThisPhone}</h2>
      <div className="pair roomy">
        <Choice
          label={t.language}
          value={taste.language}
          options={[
            { value: 'en', name: t.languages.en },
            { value: 'es', name: t.languages.es },
          ]}
          onChange={(value) => void changeTaste({ language: value === 'es' ? 'es' : 'en' })}
        />
        <Choice
          label={t.units}
          value={taste.massUnit ?? ''}
          options={[
            { value: '', name: t.likeStorehouse },
            { value: 'lb', name: t.pounds },
            { value: 'kg', name: t.kilograms },
          ]}
          onChange={(value) =>
            void changeTaste({ massUnit: value === 'lb' || value === 'kg' ? value : null })
          }
        />
        <Choice
          label={t.theme}
          value={taste.theme}
          options={(['auto', 'light', 'dark'] as const).map((value) => ({ value, name: t.themes[value] }))}
          onChange={(value) =>
            void changeTaste({ theme: value === 'light' || value === 'dark' ? value : 'auto' })
          }
        />
      </div>
    </section>
  );
}
