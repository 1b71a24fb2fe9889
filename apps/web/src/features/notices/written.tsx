import { useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { Link } from '@tanstack/react-router';
import { useState } from 'react';
import { ask } from '../../api/client.ts';
import { useHouse } from '../../ui/house.ts';
import { BackIcon } from '../../ui/icons.tsx';
import { Loaded } from '../../ui/loaded.tsx';
import { State } from '../../ui/pieces.tsx';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { Searched } from '../../ui/searched.tsx';
import { useTitle } from '../../ui/use-title.ts';
import { aboutOf, noticesOf, type Written as WrittenNotice, writtenQuery } from './queries.ts';
import { useNoticeText } from './words.ts';
import { WriteForm } from './write-form.tsx';
import './notices.css';

/** Writes a notice, and shows how far each has come. */
export function Written() {
  const words = useNoticeText();
  const { storehouse, duties, format } = useHouse();
  useTitle(words.write);
  const list = useQuery(writtenQuery(storehouse));
  const mayWrite = duties.includes('coordinator');
  return (
    <>
      <Link className="who" to="/s/$storehouse/notices" params={{ storehouse }}>
        <BackIcon />
        {words.toNotices}
      </Link>
      <h1>{mayWrite ? words.writeTitle : words.writtenTitle}</h1>
      {mayWrite ? <WriteForm /> : null}
      <section className="stack">
        {mayWrite ? <h2>{words.writtenTitle}</h2> : null}
        <Loaded reading={list}>
          {({ notices }) =>
            notices.length === 0 ? (
              <p>{words.nothingWritten}</p>
            ) : (
              <Searched
                items={notices}
                wordsOf={(notice) =>
                  `${whomOf(notice, words)} ${aboutOf(notice, format)} ${notice.words || notice.text}`
                }
              >
                {(shown) => (
                  <ul className="notices">
                    {shown.map((notice) => (
                      <OneWritten key={notice.id} notice={notice} mayTakeBack={mayWrite} />
                    ))}
                  </ul>
                )}
              </Searched>
            )
          }
        </Loaded>
      </section>
    </>
  );
}

function whomOf(
  { householdName, buyName, duty }: WrittenNotice,
  words: ReturnType<typeof useNoticeText>,
): string {
  return (
    householdName ?? buyName ?? (duty === null ? words.audiences.everyone : (words.duties[duty] ?? duty))
  );
}

function OneWritten({ notice, mayTakeBack }: { notice: WrittenNotice; mayTakeBack: boolean }) {
  const words = useNoticeText();
  const { storehouse, format } = useHouse();
  const queries = useQueryClient();
  const [isOpen, setIsOpen] = useState(false);
  const takingBack = useMutation({
    mutationFn: () => ask(noticesOf[':notice'].$delete({ param: { storehouse, notice: notice.id } })),
    onSuccess: () => queries.invalidateQueries({ queryKey: ['notices'] }),
  });
  const Title = mayTakeBack ? 'h3' : 'h2'; // without the form above it, the list stands right under the page's title
  const whom = whomOf(notice, words);
  return (
    <li className="stack">
      <Title>{`${whom}: ${aboutOf(notice, format)}`}</Title>
      {notice.isSafety ? <State kind="wrong" word={words.safety} /> : null}
      <p>{format.sentence(notice.words || notice.text)}</p>
      <p className="soft">
        {`${format.instant(notice.writtenAt)}. ${words.reached(notice.read, notice.acknowledged)}`}
      </p>
      <ProblemSaid error={takingBack.error} />
      <div className="actions">
        {notice.audience === 'duty' ? null : (
          <button
            type="button"
            className="btn"
            aria-expanded={isOpen}
            onClick={() => setIsOpen((before) => !before)}
          >
            {words.who}
          </button>
        )}
        {mayTakeBack && notice.kind === 'written' ? (
          <button
            type="button"
            className="btn"
            disabled={takingBack.isPending}
            onClick={() => takingBack.mutate()}
          >
            {words.takeBack}
          </button>
        ) : null}
      </div>
      {isOpen ? <Reach notice={notice.id} /> : null}
    </li>
  );
}

function Reach({ notice }: { notice: string }) {
  const words = useNoticeText();
  const { storehouse, format } = useHouse();
  const reach = useQuery({
    queryKey: ['notices', storehouse, notice, 'reach'],
    queryFn: () => ask(noticesOf[':notice'].reach.$get({ param: { storehouse, notice } })),
  });
  return (
    <Loaded reading={reach}>
      {({ households }) => (
        <>
          <ul className="list">
            {households.map(({ householdId, name, acknowledgedAt }) => (
              <li key={householdId}>
                <p>
                  <b>{name}</b>:{' '}
                  {acknowledgedAt === null ? words.notYet : words.reachedAt(format.instant(acknowledgedAt))}
                </p>
              </li>
            ))}
          </ul>
          <p className="soft">{words.reachNoted}</p>
        </>
      )}
    </Loaded>
  );
}
