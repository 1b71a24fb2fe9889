import { parseMoney } from '@sheafbook/units';
import { useMutation, useQueryClient } from '@tanstack/react-query';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useBooksText } from './words.ts';

export type PostField = {
  readonly name: string;
  readonly label: string;
  readonly kind: 'money' | 'text' | 'day' | 'choice';
  readonly start?: string;
  readonly options?: readonly { readonly value: string; readonly name: string }[];
  readonly isOptional?: boolean;
};

type Values = Readonly<Record<string, string>>;
/** What is sent: amounts in minor units, the rest as typed; what was left empty is left out. */
export type PostBody = Readonly<Record<string, string | number>>;
type Answering = { readonly ok: boolean; readonly status: number; json(): Promise<unknown> };

/**
 * One posting of the treasurer's, closed until it is wanted: its fields, the sentence that says what it posts, and its
 * button. What is typed outlives a closed tab; a refusal stands at its field; the same tap twice counts once.
 */
export function PostForm(props: {
  name: string;
  summary: string;
  button: string;
  fields: readonly PostField[];
  sentence: (values: Values, money: string) => string;
  send: (body: PostBody, headers: { 'Idempotency-Key': string }) => Promise<Answering>;
}) {
  const { name, summary, button, fields, sentence, send } = props;
  const t = useBooksText();
  const client = useQueryClient();
  const { format } = useHouse();
  const start = Object.fromEntries(fields.map((field) => [field.name, startOf(field)]));
  // What nobody typed over follows the book, so that an amount is never one that was open before.
  const { draft, change, reset } = useDraft<Record<string, string>>(`books.${name}`, start);
  const amounts = fields.filter(({ kind }) => kind === 'money').map((field) => typedIn(draft, field));
  const isAmount = (typed: string) => minorUnitsOf(typed, format.currency) !== null;
  const body = bodyOf(fields, draft, format.currency);
  const posting = useMutation({
    mutationFn: () => askOnce(`books.${name}`, body, (headers) => send(body ?? {}, headers)),
    onSuccess: async () => {
      reset();
      await client.invalidateQueries();
    },
  });
  const problems = problemsOf(posting.error);
  const [typed = ''] = amounts;
  return (
    <details>
      <summary>{summary}</summary>
      <Form
        onSend={() => {
          if (body) posting.mutate();
        }}
      >
        {fields.map((field) => {
          const value = typedIn(draft, field);
          if (field.kind === 'choice')
            return (
              <Choice
                key={field.name}
                label={field.label}
                value={value}
                options={field.options ?? []}
                onChange={(chosen) => change({ [field.name]: chosen })}
                problem={problems[field.name]}
              />
            );
          const isWrong = field.kind === 'money' && value !== '' && !isAmount(value);
          return (
            <Field
              key={field.name}
              label={field.label}
              type={field.kind === 'day' ? 'date' : 'text'}
              inputMode={field.kind === 'money' ? 'decimal' : undefined}
              value={value}
              onChange={(event) => change({ [field.name]: event.target.value })}
              problem={isWrong ? t.moneyProblem : problems[field.name]}
            />
          );
        })}
        <p>
          {sentence(draft, isAmount(typed) ? format.money(minorUnitsOf(typed, format.currency) ?? 0) : '…')}
        </p>
        <ProblemSaid error={posting.error} />
        <div role="status">{posting.isSuccess ? <p className="said well-said">{t.wasPosted}</p> : null}</div>
        <div className="actions">
          <button type="submit" className="btn go" disabled={posting.isPending || body === null}>
            {button}
          </button>
        </div>
      </Form>
    </details>
  );
}

const startOf = ({ start, options }: PostField): string => start ?? options?.[0]?.value ?? '';
const typedIn = (values: Values, { name }: PostField): string => values[name] ?? '';

/** An amount above zero as it was typed, in minor units; null for anything else. */
export function minorUnitsOf(typed: string, currency: string): number | null {
  const amount = parseMoney(typed, currency);
  return 'problem' in amount || amount.minorUnits === 0 ? null : amount.minorUnits;
}

/** Null while a field that is needed is empty or no amount. */
function bodyOf(fields: readonly PostField[], values: Values, currency: string): PostBody | null {
  const entries: [string, string | number][] = [];
  for (const field of fields) {
    const value = typedIn(values, field).trim();
    if (value === '' && field.isOptional) continue;
    const sent = field.kind === 'money' ? minorUnitsOf(value, currency) : value === '' ? null : value;
    if (sent === null) return null;
    entries.push([field.name, sent]);
  }
  return Object.fromEntries(entries);
}
