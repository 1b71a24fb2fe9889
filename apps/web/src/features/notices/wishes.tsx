import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import type { InferRequestType } from 'hono/client';
import { ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { Check, Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { type Wishes as WishesBody, wishesOf, wishesQuery } from './queries.ts';
import { useNoticeText } from './words.ts';

type Edit = InferRequestType<typeof wishesOf.$put>['json'];

/** How and of what the reader is told by e-mail. */
export function Wishes() {
  const words = useNoticeText();
  const { storehouse } = useHouse();
  useTitle(words.wishes);
  const reading = useQuery(wishesQuery(storehouse));
  return (
    <>
      <Link className="who" to="/s/$storehouse/notices" params={{ storehouse }}>
        <BackIcon />
        {words.toNotices}
      </Link>
      <h1>{words.wishesTitle}</h1>
      <Loaded reading={reading}>{(found) => <WishesForm key={found.version} found={found} />}</Loaded>
    </>
  );
}

const hourName = (hour: number) => `${String(hour).padStart(2, '0')}:00`;
const hoursBetween = (first: number, last: number) =>
  Array.from({ length: last - first + 1 }, (_, at) => ({
    value: String(first + at),
    name: hourName(first + at),
  }));

function WishesForm({ found }: { found: WishesBody }) {
  const t = useText();
  const words = useNoticeText();
  const { storehouse } = useHouse();
  const queries = useQueryClient();
  const { version, kinds, isEmailPossible, ...facts } = found;
  const {
    draft: { stopped, ...wished },
    isTouched,
    change,
    forget,
  } = useDraft(
    'notice-wishes',
    { ...facts, stopped: kinds.flatMap(({ kind, isOn }) => (isOn ? [] : [kind])) },
    { version, rows: { digestHour: 0, stopped: '' } },
  );
  const saving = useMutation({
    mutationFn: () => {
      const json: Edit = { ...wished, version, stoppedKinds: stopped };
      return ask(wishesOf.$put({ param: { storehouse }, json }));
    },
    onSuccess: (newer) => {
      forget();
      queries.setQueryData(wishesQuery(storehouse).queryKey, newer);
    },
  });
  const problems = problemsOf(saving.error);
  return (
    <Form onSend={() => saving.mutate()}>
      {isEmailPossible ? null : <p className="said watch-said">{words.emailOff}</p>}
      <Check
        label={words.isEmailOn}
        isOn={wished.isEmailOn}
        onChange={(isEmailOn) => change({ isEmailOn })}
      />
      <div className="pair">
        <Choice
          label={words.writtenIn}
          value={wished.language}
          options={(['en', 'es'] as const).map((value) => ({ value, name: t.languages[value] }))}
          onChange={(language) => change({ language: language as 'en' | 'es' })}
        />
        <Field
          label={words.timeZone}
          hint={words.timeZoneHint}
          value={wished.timeZone}
          onChange={(event) => change({ timeZone: event.target.value })}
          problem={problems.timeZone}
        />
      </div>
      <div className="pair">
        <Choice
          label={words.fromHour}
          value={String(wished.fromHour)}
          options={hoursBetween(0, 23)}
          onChange={(hour) => change({ fromHour: Number(hour) })}
          problem={problems.fromHour}
        />
        <Choice
          label={words.toHour}
          value={String(wished.toHour)}
          options={hoursBetween(1, 24)}
          onChange={(hour) => change({ toHour: Number(hour) })}
          problem={problems.toHour}
        />
      </div>
      <p className="soft">{words.hoursNight}</p>
      <Choice
        label={words.digest}
        value={String(wished.digestHour ?? '')}
        options={[
          { value: '', name: words.digestNone },
          ...hoursBetween(0, 23).map(({ value, name }) => ({ value, name: words.digestAt(name) })),
        ]}
        onChange={(hour) => change({ digestHour: hour === '' ? null : Number(hour) })}
        problem={problems.digestHour}
      />
      <fieldset className="stack">
        <legend>{words.kindsTitle}</legend>
        <p>{words.kindsWords}</p>
        {kinds.map(({ kind, mayStop }) =>
          mayStop ? (
            <Check
              key={kind}
              label={words.kinds[kind] ?? kind}
              isOn={!stopped.includes(kind)}
              onChange={(isOn) =>
                change({ stopped: isOn ? stopped.filter((one) => one !== kind) : [...stopped, kind] })
              }
            />
          ) : (
            <p key={kind}>{`${words.kinds[kind] ?? kind}: ${words.always}.`}</p>
          ),
        )}
      </fieldset>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <button type="submit" className="btn go" disabled={saving.isPending}>
        {t.save}
      </button>
      <p role="status">{version > 0 && !isTouched ? t.saved : ''}</p>
    </Form>
  );
}
