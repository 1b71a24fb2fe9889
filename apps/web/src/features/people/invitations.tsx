import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { api, ask } from '../../api/client.ts';
import { Choice, Field, problemsOf } from '../../ui/field.tsx';
import { Form } from '../../ui/form.tsx';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { NextStep } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { useTitle } from '../../ui/use-title.ts';
import { householdsQuery } from '../buy/run-queries.ts';
import { QrPicture } from './qr-picture.tsx';
import { usePeopleText } from './words.ts';

const invitations = api.storehouses[':storehouse'].invitations;

/** Makes a link for one person, and lists those that were made. */
export function Invitations() {
  const words = usePeopleText();
  const { storehouse } = useHouse();
  useTitle(words.invite);
  return (
    <>
      <Link className="who" to="/s/$storehouse/people" params={{ storehouse }}>
        <BackIcon />
        {words.toPeople}
      </Link>
      <h1>{words.invitationsTitle}</h1>
      <Invite />
      <LinkList />
    </>
  );
}

function Invite() {
  const words = usePeopleText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const households = useQuery(householdsQuery({ storehouse }));
  const {
    draft: { householdId, name, days },
    change,
    reset,
  } = useDraft('invitation', { householdId: '', name: '', days: '14' });
  const making = useMutation({
    mutationFn: () => {
      const into = householdId === '' ? (name.trim() === '' ? {} : { householdName: name }) : { householdId };
      return ask(
        invitations.$post({
          param: { storehouse },
          json: { ...into, withEmail: householdId !== '', days: Number(days) },
        }),
      );
    },
    onSuccess: () => {
      reset();
      return queries.invalidateQueries({ queryKey: ['invitations'] });
    },
  });
  const problems = problemsOf(making.error);
  const here = (households.data ?? []).filter(({ leftOn }) => leftOn === null);
  return (
    <NextStep>
      <Form onSend={() => making.mutate()}>
        <Choice
          label={words.invitationFor}
          value={householdId}
          options={[
            { value: '', name: words.newHousehold },
            ...here.map((household) => ({ value: household.id, name: household.name })),
          ]}
          onChange={(householdId) => change({ householdId })}
        />
        <div className="pair">
          {householdId === '' ? (
            <Field
              label={words.suggestedName}
              value={name}
              onChange={(event) => change({ name: event.target.value })}
              problem={problems.householdName && words.nameNeeded}
            />
          ) : null}
          <Field
            label={words.inviteDays}
            inputMode="numeric"
            value={days}
            onChange={(event) => change({ days: event.target.value })}
            problem={problems.days && words.daysProblem}
          />
        </div>
        {Object.keys(problems).length > 0 ? null : <ProblemSaid error={making.error} />}
        <button type="submit" className="btn go" disabled={making.isPending}>
          {words.makeLink}
        </button>
      </Form>
      {making.data ? <MadeLink made={making.data} until={format.instant(making.data.expiresAt)} /> : null}
    </NextStep>
  );
}

/** The token is shown this once; a phone offers its own ways of sending. */
function MadeLink({ made, until }: { made: { link: string; email: string | null }; until: string }) {
  const { link, email } = made;
  const words = usePeopleText();
  const { storehouseName } = useHouse();
  const [isCopied, setIsCopied] = useState(false);
  const shareText = words.shareWords(storehouseName);
  const canCopy = 'clipboard' in navigator; // not over plain HTTP
  return (
    <div className="stack" role="status">
      <p>{words.linkMade(until)}</p>
      <Field label={words.link} readOnly value={link} onFocus={(event) => event.target.select()} />
      <QrPicture text={link} label={words.linkAsPicture} />
      <div className="actions">
        {email ? (
          <a className="btn go" href={letterTo(email, { subject: storehouseName, text: shareText, link })}>
            {words.writeTo(email)}
          </a>
        ) : null}
        {canCopy ? (
          <button
            type="button"
            className="btn"
            onClick={() => void navigator.clipboard.writeText(link).then(() => setIsCopied(true))}
          >
            {words.copy}
          </button>
        ) : null}
        {'share' in navigator ? (
          <button
            type="button"
            className="btn"
            // Whoever closes the phone's own sheet has changed their mind, which is no problem to say.
            onClick={() => void navigator.share({ text: shareText, url: link }).catch(() => undefined)}
          >
            {words.share}
          </button>
        ) : null}
        {isCopied ? <span>{words.copied}</span> : null}
      </div>
    </div>
  );
}

/** Opens the coordinator’s own mail program: the link is nobody else’s, so no server keeps it in a letter. */
const letterTo = (
  email: string,
  { subject, text, link }: { subject: string; text: string; link: string },
): string =>
  `mailto:${encodeURIComponent(email).replace('%40', '@')}?subject=${encodeURIComponent(subject)}&body=${encodeURIComponent(`${text}\n\n${link}`)}`;

function LinkList() {
  const words = usePeopleText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const list = useQuery({
    queryKey: ['invitations', storehouse],
    queryFn: () => ask(invitations.$get({ param: { storehouse }, query: { limit: 'all' } })),
  });
  const withdrawing = useMutation({
    mutationFn: (invitation: string) =>
      ask(invitations[':invitation'].$delete({ param: { storehouse, invitation } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['invitations'] }),
  });
  return (
    <section className="stack">
      <h2>{words.linksMade}</h2>
      <ProblemSaid error={withdrawing.error} />
      <Loaded reading={list}>
        {({ invitations: made }) =>
          made.length === 0 ? (
            <p>{words.noLinks}</p>
          ) : (
            <Searched
              items={made}
              wordsOf={({ householdName, madeBy, state }) =>
                `${householdName ?? words.forNew} ${madeBy} ${words.states[state]}`
              }
            >
              {(shown) => (
                <ul className="list">
                  {shown.map((one) => (
                    <li key={one.id} className="row place">
                      <p>
                        <b>{one.householdName ?? words.forNew}</b>
                        <br />
                        <span className="soft">
                          {words.states[one.state]}, {words.madeBy(one.madeBy, format.instant(one.expiresAt))}
                        </span>
                      </p>
                      {one.state === 'open' ? (
                        <button type="button" className="btn" onClick={() => withdrawing.mutate(one.id)}>
                          {words.withdraw}
                        </button>
                      ) : null}
                    </li>
                  ))}
                </ul>
              )}
            </Searched>
          )
        }
      </Loaded>
    </section>
  );
}
