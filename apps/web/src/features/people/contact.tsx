import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { api, ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useText } from '../../text/taste.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { usePeopleText } from './words.ts';

const contacts = api.storehouses[':storehouse'].households[':household'].contact;
type ContactBody = InferResponseType<typeof contacts.$get, 200>;

/** A neighbour's telephone: shown to members, or looked up by a duty that says what for. */
export function ReadContact({ household }: { household: string }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const param = { storehouse, household };
  const {
    draft: { purpose },
    change,
    reset,
  } = useDraft(`read-contact.${household}`, { purpose: '' });
  const shown = useQuery({
    queryKey: ['contact', param],
    queryFn: () => ask(contacts.$get({ param, query: {} })),
    retry: false,
  });
  const looking = useMutation({
    mutationFn: () => ask(contacts.$get({ param, query: { purpose } })),
    onSuccess: () => reset(),
  });
  const refusal = shown.error instanceof ApiProblem ? shown.error.code : null;
  const contact = looking.data ?? shown.data;
  return (
    <section className="stack">
      <h2>{words.contact}</h2>
      {contact ? <ContactLines contact={contact} /> : null}
      {!contact && refusal === 'not-your-household' ? <p>{words.contactHidden}</p> : null}
      {!contact && refusal === 'invalid-input' ? (
        <Form onSend={() => looking.mutate()}>
          <p>{words.contactHidden}</p>
          <Field
            label={words.purpose}
            hint={words.purposeHint}
            value={purpose}
            onChange={(event) => change({ purpose: event.target.value })}
            problem={problemsOf(looking.error).purpose && words.purposeProblem}
          />
          <button type="submit" className="btn" disabled={looking.isPending}>
            {words.look}
          </button>
        </Form>
      ) : null}
      {shown.error && refusal !== 'not-your-household' && refusal !== 'invalid-input' ? (
        <ProblemSaid error={shown.error} />
      ) : null}
    </section>
  );
}

function ContactLines({ contact }: { contact: ContactBody }) {
  const words = usePeopleText();
  if ([contact.phone, contact.address, contact.email].every((text) => text === ''))
    return <p>{words.contactNone}</p>;
  return (
    <dl className="figures">
      <div>
        <dt>{words.phone}</dt>
        <dd>{contact.phone}</dd>
      </div>
      <div>
        <dt>{words.address}</dt>
        <dd>{contact.address}</dd>
      </div>
      {contact.email === '' ? null : (
        <div>
          <dt>{words.email}</dt>
          <dd>{contact.email}</dd>
        </div>
      )}
    </dl>
  );
}

export function OwnContact() {
  const param = useOwnHousehold();
  const reading = useQuery({
    queryKey: ['contact', param],
    queryFn: () => ask(contacts.$get({ param, query: {} })),
  });
  return (
    <Loaded reading={reading}>{(contact) => <ContactForm key={contact.version} contact={contact} />}</Loaded>
  );
}

function ContactForm({ contact }: { contact: ContactBody }) {
  const t = useText();
  const words = usePeopleText();
  const param = useOwnHousehold();
  const queries = useQueryClient();
  const {
    draft: { phone, address, email, shownToMembers },
    change,
    forget,
  } = useDraft(
    'contact',
    {
      phone: contact.phone,
      address: contact.address,
      email: contact.email,
      shownToMembers: contact.shownToMembers,
    },
    { version: contact.version },
  );
  const saving = useMutation({
    mutationFn: () =>
      ask(
        contacts.$put({ param, json: { version: contact.version, phone, address, email, shownToMembers } }),
      ),
    onSuccess: () => {
      forget();
      return queries.invalidateQueries({ queryKey: ['contact'] });
    },
  });
  const problems = problemsOf(saving.error);
  return (
    <Form onSend={() => saving.mutate()}>
      <h2>{words.contact}</h2>
      <Field
        label={words.phone}
        type="tel"
        autoComplete="tel"
        value={phone}
        onChange={(event) => change({ phone: event.target.value })}
        problem={problems.phone}
      />
      <Field
        label={words.address}
        autoComplete="street-address"
        value={address}
        onChange={(event) => change({ address: event.target.value })}
        problem={problems.address}
      />
      <Field
        label={words.email}
        type="email"
        autoComplete="email"
        hint={words.emailHint}
        value={email}
        onChange={(event) => change({ email: event.target.value })}
        problem={problems.email && words.emailProblem}
      />
      <Check
        label={words.shown}
        isOn={shownToMembers}
        onChange={(shownToMembers) => change({ shownToMembers })}
      />
      <p className="soft">{words.shownWords}</p>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
        <span role="status">{contact.version > 0 && !saving.isPending ? t.saved : ''}</span>
      </div>
    </Form>
  );
}
