import { LENDING_STARTERS, STARTER_CODES } from '@sheafbook/booking';
import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link, useNavigate, useParams } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { PartsForm } from './parts-form.tsx';
import { type Item, inside, itemQuery, readAnew } from './queries.ts';
import { moneyTyped, wholeTyped } from './typed.ts';
import { useEquipmentText } from './words.ts';

/** A thing that the group lends from now on. */
export function NewItem() {
  const words = useEquipmentText();
  const { storehouse } = useHouse();
  useTitle(words.add);
  return (
    <>
      <Link className="who" to="/s/$storehouse/equipment" params={{ storehouse }}>
        <BackIcon />
        {words.title}
      </Link>
      <h1>{words.add}</h1>
      <FactsForm />
    </>
  );
}

/** What is lent on which terms, and what belongs to it. */
export function ChangeItem() {
  const words = useEquipmentText();
  const param = useParams({ from: '/s/$storehouse/equipment/$item/change' });
  const reading = useQuery(itemQuery(param));
  useTitle(words.edit);
  return (
    <Loaded isPage reading={reading}>
      {(item) => (
        <>
          <Link className="who" to="/s/$storehouse/equipment/$item" params={param}>
            <BackIcon />
            {item.name}
          </Link>
          <h1>{words.edit}</h1>
          <div className="cols">
            <FactsForm item={item} />
            <PartsForm key={item.version} item={item} />
          </div>
        </>
      )}
    </Loaded>
  );
}

const HOUR = 60;

function startOf(item: Item | undefined, shown: (minorUnits: number) => string) {
  const text = (value: number | null | undefined) =>
    value === null || value === undefined ? '' : String(value);
  return {
    starter: '',
    name: item?.name ?? '',
    kindNote: item?.kindNote ?? '',
    cautions: item?.cautions ?? '',
    keptWhere: item?.keptWhere ?? '',
    value: item?.valueMinorUnits ? shown(item.valueMinorUnits) : '',
    deposit: shown(item?.depositMinorUnits ?? 0),
    fee: shown(item?.feeMinorUnits ?? 0),
    lateFee: shown(item?.lateFeeMinorUnits ?? 0),
    preHours: text(Math.ceil((item?.preMinutes ?? 0) / HOUR)),
    postHours: text(Math.ceil((item?.postMinutes ?? 0) / HOUR)),
    longestDays: text(item?.longestDays ?? 3),
    mayRelay: item?.mayRelay ?? false,
    touchesFood: item?.touchesFood ?? false,
    isScale: item?.isScale ?? false,
    isThermometer: item?.isThermometer ?? false,
    everyUses: text(item?.serviceEveryUses),
    everyDays: text(item?.serviceEveryDays),
    units: text(Math.max(1, item?.units.length ?? 1)),
  };
}
type Draft = ReturnType<typeof startOf>;

/** What a sort of thing starts with, as it is typed; nothing changes where none is chosen. */
function draftOfStarter(chosen: string): Partial<Draft> {
  const code = STARTER_CODES.find((one) => one === chosen);
  if (code === undefined) return {};
  const { preHours, postHours, longestDays, serviceEveryUses, serviceEveryDays, ...flags } =
    LENDING_STARTERS[code];
  return {
    ...flags,
    ...{ preHours: String(preHours), postHours: String(postHours), longestDays: String(longestDays) },
    ...{ everyUses: String(serviceEveryUses ?? ''), everyDays: String(serviceEveryDays ?? '') },
  };
}

/** What the API takes, with what is no number left undefined. */
function factsOf(draft: Draft, currency: string, item: Item | undefined) {
  const money = (text: string) => moneyTyped(text, currency);
  const minutes = (text: string) => {
    const hours = wholeTyped(text);
    return hours === undefined ? undefined : (hours ?? 0) * HOUR;
  };
  return {
    ...{ name: draft.name, kindNote: draft.kindNote, cautions: draft.cautions, keptWhere: draft.keptWhere },
    valueMinorUnits: money(draft.value),
    depositMinorUnits: money(draft.deposit) ?? (draft.deposit.trim() === '' ? 0 : undefined),
    feeMinorUnits: money(draft.fee) ?? (draft.fee.trim() === '' ? 0 : undefined),
    lateFeeMinorUnits: money(draft.lateFee) ?? (draft.lateFee.trim() === '' ? 0 : undefined),
    damageNote: item?.damageNote ?? '',
    preMinutes: minutes(draft.preHours),
    postMinutes: minutes(draft.postHours),
    longestDays: wholeTyped(draft.longestDays) ?? undefined,
    mayRelay: draft.mayRelay,
    touchesFood: draft.touchesFood,
    isScale: draft.isScale,
    isThermometer: draft.isThermometer,
    serviceEveryUses: wholeTyped(draft.everyUses),
    serviceEveryDays: wholeTyped(draft.everyDays),
    units: wholeTyped(draft.units) ?? undefined,
  };
}
type Facts = ReturnType<typeof factsOf>;
type Whole = { [Name in keyof Facts]: Exclude<Facts[Name], undefined> };
const isWhole = (facts: Facts): facts is Whole => Object.values(facts).every((value) => value !== undefined);

function FactsForm({ item }: { item?: Item }) {
  const words = useEquipmentText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const navigate = useNavigate();
  const { draft, change, forget } = useDraft(`equipment.${item?.id ?? 'new'}`, startOf(item, format.money), {
    version: item?.version ?? 0,
  });
  const [isAsked, setIsAsked] = useState(false);
  const facts = factsOf(draft, format.currency, item);
  const saving = useMutation({
    mutationFn: async () => {
      if (!isWhole(facts)) return null;
      return item
        ? ask(
            inside.equipment[':item'].$put({
              param: { storehouse, item: item.id },
              json: { ...facts, version: item.version },
            }),
          )
        : ask(inside.equipment.$post({ param: { storehouse }, json: facts }));
    },
    onSuccess: async (saved) => {
      if (saved) forget();
      await readAnew(queries);
      if (saved)
        await navigate({ to: '/s/$storehouse/equipment/$item', params: { storehouse, item: saved.id } });
    },
  });
  const refused = problemsOf(saving.error);
  const field = (
    name: Exclude<keyof Draft, 'mayRelay' | 'touchesFood' | 'isScale' | 'isThermometer'>,
    label: string,
    of: { key: keyof Facts; problem?: string; hint?: string },
  ) => (
    <Field
      label={label}
      value={draft[name]}
      {...(of.hint === undefined ? {} : { hint: of.hint })}
      onChange={(event) => change({ [name]: event.target.value })}
      problem={refused[of.key] ?? (isAsked && facts[of.key] === undefined ? of.problem : undefined)}
    />
  );
  const amount = { problem: words.moneyProblem, hint: words.depositHint };
  const count = { problem: words.numberProblem };
  const maybe = { problem: words.numberProblem, hint: words.emptyForNone };
  return (
    <Form
      onSend={() => {
        setIsAsked(true);
        if (isWhole(facts)) saving.mutate();
      }}
    >
      {item ? null : (
        <>
          <Choice
            label={words.starter}
            value={draft.starter}
            options={[
              { value: '', name: words.starterNone },
              ...STARTER_CODES.map((code) => ({ value: code, name: words.starters[code] })),
            ]}
            onChange={(starter) => change({ starter, ...draftOfStarter(starter) })}
          />
          <p className="soft">{words.starterWords}</p>
        </>
      )}
      {field('name', words.name, { key: 'name' })}
      {field('kindNote', words.kindNote, { key: 'kindNote' })}
      {field('cautions', words.cautions, { key: 'cautions' })}
      {field('keptWhere', words.keptWhere, { key: 'keptWhere' })}
      {field('units', words.units, { key: 'units', ...count })}
      {field('value', words.worth, { key: 'valueMinorUnits', ...maybe })}
      {field('deposit', words.deposit, { key: 'depositMinorUnits', ...amount })}
      {field('fee', words.fee, { key: 'feeMinorUnits', ...amount })}
      {field('lateFee', words.lateFee, { key: 'lateFeeMinorUnits', ...amount })}
      {field('longestDays', words.longestDays, { key: 'longestDays', ...count })}
      {field('preHours', words.preHours, { key: 'preMinutes', ...count })}
      {field('postHours', words.postHours, { key: 'postMinutes', ...count })}
      {field('everyUses', words.everyUses, { key: 'serviceEveryUses', ...maybe })}
      {field('everyDays', words.everyDays, { key: 'serviceEveryDays', ...maybe })}
      <Check label={words.mayRelay} isOn={draft.mayRelay} onChange={(mayRelay) => change({ mayRelay })} />
      <Check
        label={words.touchesFood}
        isOn={draft.touchesFood}
        onChange={(touchesFood) => change({ touchesFood })}
      />
      <Check label={words.isScale} isOn={draft.isScale} onChange={(isScale) => change({ isScale })} />
      <Check
        label={words.isThermometer}
        isOn={draft.isThermometer}
        onChange={(isThermometer) => change({ isThermometer })}
      />
      {refused.isScale || refused.isThermometer ? (
        <p className="problem" role="alert">
          {refused.isScale ?? refused.isThermometer}
        </p>
      ) : null}
      <ProblemSaid error={saving.error} />
      <div>
        <button type="submit" className="btn go" disabled={saving.isPending}>
          {words.save}
        </button>
      </div>
    </Form>
  );
}
