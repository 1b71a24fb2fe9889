import { Choice, Field } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { useDraft } from '../../ui/use-draft.ts';
import type { Sheet } from './landing-body.ts';
import type { DeliveryFacts, Written } from './queue.ts';
import type { Landing } from './use-landing.ts';
import { useLandingText } from './words.ts';

type LorryFormProps = {
  landing: Landing;
  sheet: Sheet;
  /** A lorry that was refused and is put right. */
  mending: Written | null;
  onDone: () => void;
};

/** The paper that the driver holds out: who sent it, who brought it, and who counts. */
export function LorryForm({ landing, sheet, mending, onDone }: LorryFormProps) {
  const t = useLandingText();
  const { format, personName } = useHouse();
  const suppliers = [
    ...new Map(
      sheet.orders
        .filter(({ isCancelled }) => !isCancelled)
        .map((order) => [order.supplierId, order.supplier]),
    ),
  ];
  const before = mending?.act.kind === 'delivery' ? mending.act.facts : null;
  const { draft, change, forget } = useDraft<DeliveryFacts>(
    `lorry.${sheet.buyId}.${mending?.id ?? ''}`,
    before ?? {
      supplierId: suppliers[0]?.[0] ?? '',
      carrier: '',
      arrivedOn: format.today(),
      countedBy: personName,
      carrierNote: '',
    },
  );
  const field = (key: 'carrier' | 'countedBy' | 'carrierNote', label: string) => (
    <Field label={label} value={draft[key]} onChange={(event) => change({ [key]: event.target.value })} />
  );
  return (
    <Form
      onSend={() => {
        if (mending)
          landing.mend(mending.id, {
            kind: 'delivery',
            localId: mending.act.kind === 'delivery' ? mending.act.localId : '',
            facts: draft,
          });
        else landing.write({ kind: 'delivery', localId: `here-${Date.now()}`, facts: draft });
        forget();
        onDone();
      }}
    >
      {suppliers.length > 1 ? (
        <Choice
          label={t.supplier}
          value={draft.supplierId}
          options={suppliers.map(([value, name]) => ({ value, name }))}
          onChange={(supplierId) => change({ supplierId })}
        />
      ) : (
        <p>{t.lorryOf(suppliers[0]?.[1] ?? '')}</p>
      )}
      <div className="pair roomy">
        {field('carrier', t.carrier)}
        <Field
          label={t.arrivedOn}
          type="date"
          max={format.today()}
          value={draft.arrivedOn}
          onChange={(event) => change({ arrivedOn: event.target.value })}
          problem={draft.arrivedOn === '' ? t.dayNeeded : undefined}
        />
      </div>
      {field('countedBy', t.countedBy)}
      {field('carrierNote', t.carrierNote)}
      <p className="soft">{t.countBeforeSigning}</p>
      <button type="submit" className="btn go" disabled={draft.arrivedOn === '' || draft.supplierId === ''}>
        {t.startLorry}
      </button>
    </Form>
  );
}
