import { spellCode } from '@sheafbook/units';
import { askOnce } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { type Hold, inside, type SlipWish, type Standing, useHoldCommand } from './queries.ts';
import { useHoldText } from './words.ts';

type Became = SlipWish['became'][number]['became'];
const BECAME: readonly Became[] = ['aside', 'eaten', 'given', 'thrown-away', 'never-had'];

type Whose = {
  readonly key: string;
  readonly name: string;
  readonly householdId: string | null;
  readonly pantryId: string | null;
  readonly codes: readonly string[];
};

/** Everybody who may have a slip to give back; a pantry that got it by several manifests has one for all of them. */
function listWhose({ households, pantries }: Standing): Whose[] {
  const pantryIds = [...new Set(pantries.map(({ pantryId }) => pantryId))];
  const ofPantry = (pantryId: string) => pantries.filter((row) => row.pantryId === pantryId);
  return [
    ...households.map(({ householdId, name, codes }) => ({
      ...{ key: householdId, name, householdId, pantryId: null, codes },
    })),
    ...pantryIds.map((pantryId) => ({
      ...{ key: pantryId, name: ofPantry(pantryId)[0]?.pantry ?? '', householdId: null, pantryId },
      codes: ofPantry(pantryId).flatMap(({ codes }) => codes),
    })),
  ];
}

const EMPTY = { whose: '', signedBy: '', writtenOn: '', note: '', became: {} as Record<string, Became | ''> };

/** What stands on a slip that came back on paper, code by code. */
export function SlipForm({ hold, standing }: { hold: Hold; standing: Standing }) {
  const words = useHoldText();
  const { storehouse } = useHouse();
  const { draft, change, reset } = useDraft(`slip.${hold.id}`, EMPTY);
  const all = listWhose(standing);
  const whose = all.find(({ key }) => key === draft.whose);
  const keying = useHoldCommand(async () => {
    const { signedBy, writtenOn, note } = draft;
    const became = (whose?.codes ?? []).flatMap((code) => {
      const said = draft.became[code] ?? '';
      return said === '' ? [] : [{ code, became: said }];
    });
    const of = { householdId: whose?.householdId ?? null, pantryId: whose?.pantryId ?? null };
    const json = { ...of, signedBy, writtenOn, note, became };
    await askOnce(`slip.${hold.id}`, json, (headers) =>
      inside.holds[':hold'].slips.$post({ param: { storehouse, hold: hold.id }, json }, { headers }),
    );
    reset(EMPTY);
  });
  const problems = problemsOf(keying.error);
  if (all.length === 0) return null;
  const field = (name: 'signedBy' | 'writtenOn' | 'note') => ({
    ...{ value: draft[name], problem: problems[name] },
    onChange: (event: { target: { value: string } }) => change({ [name]: event.target.value }),
  });
  return (
    <details>
      <summary>{words.slipTitle}</summary>
      <Form isTight onSend={() => keying.mutate(undefined)}>
        <p>{words.slipSays}</p>
        <Choice
          label={words.slipWhose}
          value={draft.whose}
          problem={problems.householdId}
          options={[
            { value: '', name: words.slipChoose },
            ...all.map(({ key, name }) => ({ value: key, name })),
          ]}
          onChange={(key) => change({ whose: key, became: {} })}
        />
        <Field label={words.slipSigned} {...field('signedBy')} />
        <Field label={words.slipDay} type="date" required {...field('writtenOn')} />
        {(whose?.codes ?? []).map((code) => (
          <Choice
            key={code}
            label={words.slipCode(spellCode(code))}
            value={draft.became[code] ?? ''}
            options={[
              { value: '', name: words.slipUnsaid },
              ...BECAME.map((value) => ({ value, name: words.became[value] ?? value })),
            ]}
            onChange={(value) => change({ became: { ...draft.became, [code]: value as Became | '' } })}
          />
        ))}
        <Field label={words.slipNote} {...field('note')} />
        <ProblemSaid error={keying.error} />
        <div className="actions">
          <button type="submit" className="btn" disabled={whose === undefined || keying.isPending}>
            {words.slipKey}
          </button>
        </div>
      </Form>
    </details>
  );
}

type Slip = NonNullable<Standing['households'][number]['slip']>;

/** A slip as it was keyed in: the day on the paper, and when and by whom it came into the book. */
export function useSlipWords(): (slip: Slip) => string {
  const words = useHoldText();
  const { format } = useHouse();
  return ({ signedBy, writtenOn, keyedBy, keyedAt, became, note }) =>
    [
      words.slipBack(signedBy, format.day(writtenOn), keyedBy, format.instant(keyedAt)),
      became
        .map((line) => words.slipPart(spellCode(line.code), words.became[line.became] ?? line.became))
        .join('; '),
      note,
    ]
      .filter((part) => part !== '')
      .join(' ');
}
