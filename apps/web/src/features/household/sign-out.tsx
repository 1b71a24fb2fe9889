import { useMutation, useQueryClient } from '@tanstack/react-query';
import { useNavigate } from '@tanstack/react-router';
import { forgetActing } from '../../api/acting.ts';
import { api, ask } from '../../api/client.ts';
import { useText } from '../../text/taste.ts';
import { ProblemSaid } from '../../ui/problem-said.tsx';
import { forgetDrafts } from '../../ui/use-draft.ts';

/** What the service worker kept for this person; it does the same by itself, once it stands. */
async function forgetReadings(): Promise<void> {
  if (!('caches' in window)) return;
  const names = await caches.keys();
  await Promise.all(names.filter((name) => name.includes('readings')).map((name) => caches.delete(name)));
}

export function SignOut() {
  const t = useText();
  const navigate = useNavigate();
  const queries = useQueryClient();
  const leaving = useMutation({
    mutationFn: (isEverywhere: boolean) =>
      isEverywhere ? ask(api.sessions.$delete()) : ask(api.session.$delete()),
    onSuccess: async () => {
      forgetActing();
      forgetDrafts();
      await forgetReadings();
      await navigate({ to: '/sign-in' });
      queries.clear();
    },
  });
  return (
    <section className="stack">
      <h2>{t.signOut}</h2>
      <div className="actions">
        <button type="button" className="btn" onClick={() => leaving.mutate(false)}>
          {t.signOutHere}
        </button>
        <button type="button" className="btn" onClick={() => leaving.mutate(true)}>
          {t.signOutEverywhere}
        </button>
      </div>
      {leaving.error ? <ProblemSaid error={leaving.error} /> : null}
    </section>
  );
}
