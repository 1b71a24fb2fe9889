import { api } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { type PostBody, PostForm } from './post-form.tsx';
import { isTill, useTills } from './tills.ts';
import { useBooksText } from './words.ts';

const claims = api.storehouses[':storehouse'].claims[':claim'];

/** What a supplier may say to a claim: it grants it, or it refuses. */
export function ClaimAnswers({
  claim,
  supplier,
  minorUnits,
}: {
  claim: string;
  supplier: string;
  minorUnits: number;
}) {
  const t = useBooksText();
  const { storehouse, format } = useHouse();
  const tills = useTills(t.creditNote);
  const param = { storehouse, claim };
  return (
    <>
      <PostForm
        name={`credit.${claim}`}
        summary={t.granted}
        button={t.postCredit}
        fields={[
          { name: 'minorUnits', label: t.grantedAmount, kind: 'money', start: format.money(minorUnits) },
          { name: 'till', label: t.cameBy, kind: 'choice', options: tills, isOptional: true },
          { name: 'note', label: t.note, kind: 'text', isOptional: true },
        ]}
        sentence={(_, money) => t.creditSentence(money, supplier)}
        send={(body, headers) => claims.credit.$post({ param, json: creditOf(body) }, { headers })}
      />
      <PostForm
        name={`refuse.${claim}`}
        summary={t.refusedBySupplier}
        button={t.postRefusal}
        fields={[{ name: 'because', label: t.reason, kind: 'text' }]}
        sentence={() => t.refusalSentence(format.money(minorUnits))}
        send={(body, headers) =>
          claims.refusal.$post({ param, json: { because: String(body.because) } }, { headers })
        }
      />
    </>
  );
}

const creditOf = ({ minorUnits, till, note }: PostBody) => ({
  minorUnits: Number(minorUnits),
  note: String(note ?? ''),
  ...(isTill(till) ? { till } : {}),
});
