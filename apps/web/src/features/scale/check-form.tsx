import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useScaleText } from './words.ts';

const FIGURES = ['should', 'shown', 'limit'] as const;
type Figure = (typeof FIGURES)[number];
type Typed = Record<Figure, string>;
type Read = Record<Figure, number>;

/** The duties that check, as the API lets them. */
export const CHECKS = ['equipment_keeper', 'packing_lead', 'coordinator'] as const;

/** A check of a scale or of a thermometer: what it should show, what it shows, by how much it may be off, and the day. */
export function CheckForm({
  name,
  said,
  start,
  figures,
  problem,
  inputMode,
  read,
  send,
}: {
  /** Of the draft. */
  name: string;
  said: readonly string[];
  start: Omit<Typed, 'shown'>;
  /** Each field's name on the wire, its label and its hint. */
  figures: Readonly<Record<Figure, { api: string; label: string; hint?: string }>>;
  problem: string;
  /** A phone's keyboard of numbers has no minus. */
  inputMode: 'numeric' | 'text';
  /** A typed figure; null for nothing, undefined for no number. */
  read: (typed: string) => number | null | undefined;
  send: (reading: Read, checkedOn: string) => Promise<unknown>;
}) {
  const t = useScaleText();
  const { format } = useHouse();
  const queries = useQueryClient();
  const { draft, change, reset } = useDraft(name, { ...start, shown: '', day: format.today() });
  const [isAsked, setIsAsked] = useState(false);
  const isWrong = (figure: Figure) => typeof read(draft[figure]) !== 'number';
  const saving = useMutation({
    mutationFn: async () => {
      const [should, shown, limit] = FIGURES.map((figure) => read(draft[figure]));
      if (typeof should !== 'number' || typeof shown !== 'number' || typeof limit !== 'number') return null;
      return send({ should, shown, limit }, draft.day);
    },
    onSuccess: async (saved) => {
      if (!saved) return;
      setIsAsked(false);
      reset();
      await queries.invalidateQueries({ queryKey: ['equipment'] });
      await queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  const refused = problemsOf(saving.error);
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        saving.mutate();
      }}
    >
      {said.map((sentence) => (
        <p key={sentence} className="soft">
          {sentence}
        </p>
      ))}
      {FIGURES.map((figure) => {
        const { api, label, hint } = figures[figure];
        return (
          <Field
            key={figure}
            label={label}
            {...(hint === undefined ? {} : { hint })}
            inputMode={inputMode}
            value={draft[figure]}
            onChange={(event) => change({ [figure]: event.target.value })}
            problem={refused[api] ?? (isAsked && isWrong(figure) ? problem : undefined)}
          />
        );
      })}
      <Field
        label={t.day}
        type="date"
        value={draft.day}
        onChange={(event) => change({ day: event.target.value })}
        problem={refused.checkedOn}
      />
      <ProblemSaid error={saving.error} />
      {saving.data ? (
        <p className="said well-said" role="status">
          {t.saved}
        </p>
      ) : null}
      <div>
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
      </div>
    </Form>
  );
}
