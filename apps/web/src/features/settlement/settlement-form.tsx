import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { newKey } from '../../api/new-key.ts';
import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { moneyTyped, wholeTyped } from '../equipment/typed.ts';
import { type PreviewBody, type SettlementBody, sessionApi, type Wish } from './queries.ts';
import { SharedCosts } from './shared.tsx';
import { useSettlementText } from './words.ts';

type Draft = {
  readonly used: Readonly<Record<string, string>>;
  readonly spoilt: Readonly<Record<string, string>>;
  readonly byMachine: Readonly<Record<string, string>>;
  readonly itemId: string;
  readonly fee: string;
  readonly what: string;
  readonly paid: string;
};
const EMPTY: Draft = { used: {}, spoilt: {}, byMachine: {}, itemId: '', fee: '', what: '', paid: '' };

/** What was used, then what that would post, then the posting; each change hides what was shown before it. */
export function SettlementForm({ body }: { body: SettlementBody }) {
  const t = useSettlementText();
  const { storehouse, format, household } = useHouse();
  const queries = useQueryClient();
  const { draft, change, forget } = useDraft<Draft>(`settlement.${body.sessionId}`, EMPTY);
  const [shown, setShown] = useState<{ wish: Wish; preview: PreviewBody; key: string } | null>(null);
  const [isTried, setIsTried] = useState(false);
  const param = { storehouse, session: body.sessionId };
  const wish = readWish(draft, { body, currency: format.currency, household });
  const previewing = useMutation({
    mutationFn: async (asked: Wish) => ({
      ...{ wish: asked, key: newKey() },
      preview: await ask(sessionApi['settlement-previews'].$post({ param, json: asked })),
    }),
    onSuccess: setShown,
  });
  const posting = useMutation({
    mutationFn: ({ wish: asked, preview, key }: NonNullable<typeof shown>) =>
      ask(
        sessionApi.settlement.$post(
          { param, json: { ...asked, seen: preview.seen } },
          { headers: { 'Idempotency-Key': key } },
        ),
      ),
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['packing'] });
    },
  });
  const edit = (part: Partial<Draft>) => {
    setShown(null);
    change(part);
  };
  return (
    <>
      <Form
        label={t.title}
        onSend={() => {
          setIsTried(true);
          if (wish) previewing.mutate(wish);
        }}
      >
        <SupplyFields {...{ body, draft, edit, isTried }} />
        <BesideFields {...{ body, draft, edit, isTried }} />
        <ProblemSaid error={previewing.error} />
        <button type="submit" className={shown ? 'btn' : 'btn go'} disabled={previewing.isPending}>
          {t.preview}
        </button>
      </Form>
      {shown ? (
        <NextStep
          title={
            shown.preview.totalMinorUnits === 0
              ? t.nothing
              : t.willPost(format.money(shown.preview.totalMinorUnits))
          }
        >
          <SharedCosts shown={shown.preview} />
          <ProblemSaid error={posting.error} />
          <button
            type="button"
            className="btn go"
            disabled={posting.isPending}
            onClick={() => posting.mutate(shown)}
          >
            {t.post}
          </button>
        </NextStep>
      ) : null}
    </>
  );
}

type Fields = {
  body: SettlementBody;
  draft: Draft;
  edit: (part: Partial<Draft>) => void;
  isTried: boolean;
};

/** Supplies of which some are on hand, or which the log says were used. */
const usable = ({ proposal }: SettlementBody) =>
  proposal.filter(({ supply, usedPieces }) => supply.onHandPieces > 0 || usedPieces > 0);

const usedOf = (draft: Draft, { supply, usedPieces }: SettlementBody['proposal'][number]): string =>
  draft.used[supply.id] ?? String(Math.min(usedPieces, supply.onHandPieces));

function SupplyFields({ body, draft, edit, isTried }: Fields) {
  const t = useSettlementText();
  const { format } = useHouse();
  const lines = usable(body);
  const problemOf = (text: string) =>
    isTried && wholeTyped(text) === undefined ? t.wholeProblem : undefined;
  if (lines.length === 0) return <p>{t.noSupplies}</p>;
  return (
    <>
      <p>{t.proposed}</p>
      <div className="pair roomy">
        {lines.map((line) => (
          <Field
            key={line.supply.id}
            label={t.used(line.supply.name)}
            hint={t.onHand(format.count(line.supply.onHandPieces))}
            inputMode="numeric"
            value={usedOf(draft, line)}
            problem={problemOf(usedOf(draft, line))}
            onChange={(event) => edit({ used: { ...draft.used, [line.supply.id]: event.target.value } })}
          />
        ))}
      </div>
      <details>
        <summary>{t.spoiltOnes}</summary>
        <div className="pair roomy">
          {lines.flatMap(({ supply }) =>
            (['spoilt', 'byMachine'] as const).map((kind) => (
              <Field
                key={`${supply.id} ${kind}`}
                label={t[kind](supply.name)}
                inputMode="numeric"
                value={draft[kind][supply.id] ?? ''}
                problem={problemOf(draft[kind][supply.id] ?? '')}
                onChange={(event) => edit({ [kind]: { ...draft[kind], [supply.id]: event.target.value } })}
              />
            )),
          )}
        </div>
      </details>
    </>
  );
}

function BesideFields({ body, draft, edit, isTried }: Fields) {
  const t = useSettlementText();
  const { format, household, householdName } = useHouse();
  const isMoney = (text: string) => typeof moneyTyped(text, format.currency) === 'number';
  const said = (is: boolean, words: string) => (isTried && is ? words : undefined);
  return (
    <details open={draft.what !== '' || draft.itemId !== ''}>
      <summary>{t.besides}</summary>
      <div className="pair roomy">
        <Choice
          label={t.item}
          value={draft.itemId}
          options={[
            { value: '', name: t.noItem },
            ...body.items.map(({ id, name }) => ({ value: id, name })),
          ]}
          onChange={(itemId) => edit({ itemId })}
        />
        <Field
          label={t.fee(format.currency)}
          inputMode="decimal"
          value={draft.fee}
          problem={said(draft.itemId !== '' && !isMoney(draft.fee), t.moneyProblem)}
          onChange={(event) => edit({ fee: event.target.value })}
        />
        {household === null ? null : (
          <>
            <Field
              label={t.what}
              hint={t.paidBy(householdName)}
              value={draft.what}
              problem={said(draft.what.trim() === '' && draft.paid !== '', t.whatProblem)}
              onChange={(event) => edit({ what: event.target.value })}
            />
            <Field
              label={t.paid(format.currency)}
              inputMode="decimal"
              value={draft.paid}
              problem={said(draft.what.trim() !== '' && !isMoney(draft.paid), t.moneyProblem)}
              onChange={(event) => edit({ paid: event.target.value })}
            />
          </>
        )}
      </div>
    </details>
  );
}

/** Null while something can't be read. */
function readWish(
  draft: Draft,
  of: { body: SettlementBody; currency: string; household: string | null },
): Wish | null {
  const supplies = usable(of.body).map((line) => ({
    supplyId: line.supply.id,
    usedPieces: wholeTyped(usedOf(draft, line)),
    spoiltPieces: wholeTyped(draft.spoilt[line.supply.id] ?? ''),
    spoiltByMachinePieces: wholeTyped(draft.byMachine[line.supply.id] ?? ''),
  }));
  const isRead = supplies.every(({ supplyId: _, ...pieces }) =>
    Object.values(pieces).every((count) => count !== undefined),
  );
  const fee = draft.itemId === '' ? 0 : moneyTyped(draft.fee, of.currency);
  const paid =
    draft.what.trim() === '' ? (draft.paid === '' ? 0 : null) : moneyTyped(draft.paid, of.currency);
  if (!isRead || typeof fee !== 'number' || typeof paid !== 'number') return null;
  return {
    supplies: supplies.map(({ supplyId, ...pieces }) => ({
      ...{ supplyId, usedPieces: pieces.usedPieces ?? 0, spoiltPieces: pieces.spoiltPieces ?? 0 },
      spoiltByMachinePieces: pieces.spoiltByMachinePieces ?? 0,
    })),
    equipmentFees: fee > 0 ? [{ itemId: draft.itemId, minorUnits: fee }] : [],
    sundries:
      paid > 0 && of.household !== null
        ? [
            {
              ...{ what: draft.what.trim(), minorUnits: paid },
              paidBy: { who: 'household' as const, householdId: of.household },
            },
          ]
        : [],
  };
}
