import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import type { InferResponseType } from 'hono/client';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { ApiProblem } from '../../api/problem.ts';
import { useText } from '../../text/taste.ts';
import { Check, Field, problemsOf } from '../../ui/field.tsx';
import { useHouse, useOwnHousehold } from '../../ui/house.ts';
import { Loaded } from '../../ui/loaded.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { usePeopleText } from './words.ts';

const contacts = api.storehouses[':storehouse'].households[':household'].contact;
type ContactBody = InferResponseType<typeof contacts.$get, 200>;

/** A neighbour's telephone: shown to members, or looked up by a duty that says what for. */
export function ReadContact({ household }: { household: string }) {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  const param = { storehouse, household };
  const [purpose, setPurpose] = useState('');
  const shown = useQuery({
    queryKey: ['contact', param],
    queryFn: () => ask(contacts.$get({ param, query: {} })),
    retry: false,
  });
  const looking = useMutation({
    mutationFn: () => ask(contacts.$get({ param, query: { purpose } })),
  });
  const refusal = shown.error instanceof ApiProblem ? shown.error.code : null;
  const contact = looking.data ?? shown.data;
  return (
    <section className="stack">
      <h2>{words.contact}</h2>
      {contact ? <ContactLines contact={contact} /> : null}
      {!contact && refusal === 'not-your-household' ? <p>{words.contactHidden}</p> : null}
      {!contact && refusal === 'invalid-input' ? (
        <form
          className="stack"
          noValidate
          onSubmit={(event) => {
            event.preventDefault();
            looking.mutate();
          }}
        >
          <p>{words.contactHidden}</p>
          <Field
            label={words.purpose}
            hint={words.purposeHint}
            value={purpose}
            onChange={(event) => setPurpose(event.target.value)}
            problem={problemsOf(looking.error).purpose && words.purposeProblem}
          />
          <button type="submit" className="btn" disabled={looking.isPending}>
            {words.look}
          </button>
        </form>
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
  const [phone, setPhone] = useState(contact.phone);
  const [address, setAddress] = useState(contact.address);
  const [email, setEmail] = useState(contact.email);
  const [shownToMembers, setShown] = useState(contact.shownToMembers);
  const saving = useMutation({
    mutationFn: () =>
      ask(
        contacts.$put({ param, json: { version: contact.version, phone, address, email, shownToMembers } }),
      ),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['contact'] }),
  });
  const problems = problemsOf(saving.error);
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        saving.mutate();
      }}
    >
      <h2>{words.contact}</h2>
      <Field
        label={words.phone}
        type="tel"
        autoComplete="tel"
        value={phone}
        onChange={(event) => setPhone(event.target.value)}
        problem={problems.phone}
      />
      <Field
        label={words.address}
        autoComplete="street-address"
        value={address}
        onChange={(event) => setAddress(event.target.value)}
        problem={problems.address}
      />
      <Field
        label={words.email}
        type="email"
        autoComplete="email"
        hint={words.emailHint}
        value={email}
        onChange={(event) => setEmail(event.target.value)}
        problem={problems.email && words.emailProblem}
      />
      <Check label={words.shown} isOn={shownToMembers} onChange={setShown} />
      <p className="soft">{words.shownWords}</p>
      {Object.keys(problems).length > 0 ? null : <ProblemSaid error={saving.error} />}
      <div className="actions">
        <button type="submit" className="btn" disabled={saving.isPending}>
          {t.save}
        </button>
        <span role="status">{contact.version > 0 && !saving.isPending ? t.saved : ''}</span>
      </div>
    </form>
  );
}
