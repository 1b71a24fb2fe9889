import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { api, ask, askOnce } from '../../api/client.ts';
import { useTaste } from '../../text/taste.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { nameIn } from '../../ui/name-in.ts';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { landingQuery } from '../landing/queries.ts';
import type { BuyOfPaper } from './key-slip.tsx';
import type { FoundPaper } from './queries.ts';
import { usePaperText } from './words.ts';
import { type When, WrittenWhen, writtenAtOf } from './written-when.tsx';

const inside = api.storehouses[':storehouse'];
type Draft = When & {
  supplierId: string;
  carrier: string;
  countedBy: string;
  carrierNote: string;
  counts: Readonly<Record<string, string>>;
  /** The lorry that is written down already, when its count was refused. */
  delivery: { readonly id: string; readonly version: number } | null;
  isDone: boolean;
};

/** A landing sheet as pens filled it in: the lorry and its count. Bag by bag goes on at the landing page. */
export function KeySheet({ buy, paper }: { buy: BuyOfPaper; paper: FoundPaper }) {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const landing = useQuery(landingQuery({ storehouse, buy: buy.id }));
  if (!['ordered', 'landed', 'shared-out'].includes(buy.stage))
    return <p className="soft">{words.notLanding}</p>;
  return <Loaded reading={landing}>{(sheet) => <SheetForm {...{ buy, paper, sheet }} />}</Loaded>;
}

type Sheet = Awaited<ReturnType<NonNullable<ReturnType<typeof landingQuery>['queryFn']>>>;

function SheetForm({ buy, paper, sheet }: { buy: BuyOfPaper; paper: FoundPaper; sheet: Sheet }) {
  const words = usePaperText();
  const { storehouse } = useHouse();
  const { language } = useTaste();
  const queries = useQueryClient();
  const orders = sheet.orders.filter(({ isCancelled }) => !isCancelled);
  const { draft, change } = useDraft<Draft>(
    `key-sheet.${paper.code}`,
    {
      ...{ day: '', time: '', carrier: '', countedBy: '', carrierNote: '', counts: {} },
      supplierId: orders[0]?.supplierId ?? '',
      delivery: null,
      isDone: false,
    },
    { rows: { counts: '', delivery: { id: '', version: 0 } } },
  );
  const orderNos = orders
    .filter(({ supplierId }) => supplierId === draft.supplierId)
    .map(({ orderNo }) => orderNo);
  const sizes = sheet.lines.filter(({ orderNo }) => orderNos.includes(orderNo));
  const writtenAt = writtenAtOf(draft);
  const counts = sizes.flatMap(({ bagOfferId }) => {
    const text = draft.counts[bagOfferId]?.trim() ?? '';
    return /^\d{1,6}$/.test(text) ? [{ bagOfferId, countedBags: Number(text) }] : [];
  });
  const isWrong = sizes.some(({ bagOfferId }) => !/^\d{0,6}$/.test(draft.counts[bagOfferId]?.trim() ?? ''));
  const keying = useMutation({
    mutationFn: async () => {
      const pen = { writtenAt, paperCode: paper.code };
      const delivery = draft.delivery ?? (await sendLorry({ storehouse, buy: buy.id, draft, pen }));
      change({ delivery });
      const param = { storehouse, delivery: delivery.id };
      await ask(
        inside.deliveries[':delivery'].counts.$put({
          param,
          json: { version: delivery.version, counts, ...pen },
        }),
      );
      change({ isDone: true });
    },
    onSettled: () => queries.invalidateQueries({ queryKey: ['buy', { storehouse, buy: buy.id }] }),
  });
  const problems = problemsOf(keying.error);
  if (draft.isDone)
    return (
      <NextStep>
        <p role="status">{words.sheetKeyed}</p>
        <Link className="btn go" to="/s/$storehouse/buys/$buy/landing" params={{ storehouse, buy: buy.id }}>
          {words.toLanding}
        </Link>
      </NextStep>
    );
  const field = (key: 'carrier' | 'countedBy' | 'carrierNote', label: string) => (
    <Field
      label={label}
      value={draft[key]}
      onChange={(event) => change({ [key]: event.target.value })}
      problem={problems[key]}
    />
  );
  return (
    <Form onSend={() => keying.mutate()}>
      <h2>{words.keySheet(buy.name)}</h2>
      {orders.length > 1 ? (
        <Choice
          label={words.supplier}
          value={draft.supplierId}
          options={orders.map(({ supplierId, supplier }) => ({ value: supplierId, name: supplier }))}
          onChange={(supplierId) => change({ supplierId })}
        />
      ) : null}
      <WrittenWhen when={draft} onChange={change} problem={problems.writtenAt ?? problems.arrivedOn} />
      {field('carrier', words.carrier)}
      {field('countedBy', words.countedBy)}
      {field('carrierNote', words.carrierNote)}
      {sizes.map((size) => {
        const text = draft.counts[size.bagOfferId] ?? '';
        const food = nameIn(language, size.food);
        return (
          <Field
            key={size.bagOfferId}
            label={words.counted(food, size.bagLabel)}
            inputMode="numeric"
            value={text}
            onChange={(event) =>
              change({ counts: { ...draft.counts, [size.bagOfferId]: event.target.value } })
            }
            problem={/^\d{0,6}$/.test(text.trim()) ? undefined : words.countProblem}
          />
        );
      })}
      <NextStep>
        <p>{writtenAt === undefined ? words.whenNeeded : words.keySheetPosts}</p>
        <ProblemSaid error={keying.error} />
        <button
          type="submit"
          className="btn go"
          disabled={keying.isPending || writtenAt === undefined || counts.length === 0 || isWrong}
        >
          {words.keyIn}
        </button>
      </NextStep>
    </Form>
  );
}

async function sendLorry(of: {
  storehouse: string;
  buy: string;
  draft: Draft;
  pen: { writtenAt: string | undefined; paperCode: string };
}): Promise<{ id: string; version: number }> {
  const { storehouse, buy, draft, pen } = of;
  const { supplierId, carrier, countedBy, carrierNote, day } = draft;
  const json = { supplierId, carrier, countedBy, carrierNote, arrivedOn: day, ...pen };
  const { id, version } = await askOnce(`key-sheet.${pen.paperCode}`, json, (headers) =>
    inside.buys[':buy'].deliveries.$post({ param: { storehouse, buy }, json }, { headers }),
  );
  return { id, version };
}
