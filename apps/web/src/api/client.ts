import type { AppType } from '@sheafbook/api';
import { hc } from 'hono/client';
import { actingHere } from './acting.ts';
import { noteKept } from './kept.ts';
import { newKey } from './new-key.ts';
import { ApiProblem, readProblem } from './problem.ts';

/** The API, typed by its own routes; nothing else of the server comes into the web. */
export const api = hc<AppType>('/', {
  headers: () => ({ 'Accept-Language': document.documentElement.lang, ...forHousehold() }),
}).api;

/** A helper's tab names the household that it acts for in every request; the server looks whether it may. */
function forHousehold(): Record<string, string> {
  const acting = actingHere();
  return acting ? { 'Sheafbook-For-Household': acting.household } : {};
}

type Answering = {
  readonly ok: boolean;
  readonly status: number;
  readonly headers?: Headers;
  json(): Promise<unknown>;
};

/** Waits for an answer and gives its body, or throws what the server refused with. */
export async function ask<Answer extends Answering>(
  call: Promise<Answer>,
): Promise<Awaited<ReturnType<Answer['json']>>> {
  const answer = await call.catch((cause: unknown) => {
    throw new ApiProblem({ code: 'offline', status: 0, title: '', detail: '', fields: [] }, { cause });
  });
  if (answer.headers) noteKept(answer.headers);
  if (answer.ok) return (answer.status === 204 ? null : await answer.json()) as never;
  throw new ApiProblem(await readProblem(answer));
}

type Kept = { readonly body: string; readonly key: string };

/**
 * Sends a command that counts once. Its key is kept until the server has answered, so that the same tap after a lost
 * signal, or after the tab was closed, is known for the same command.
 */
export async function askOnce<Answer extends Answering>(
  name: string,
  body: unknown,
  send: (headers: { 'Idempotency-Key': string }) => Promise<Answer>,
): Promise<Awaited<ReturnType<Answer['json']>>> {
  const place = `sheafbook.key.${actingHere()?.household ?? ''}${name}`;
  const text = JSON.stringify(body);
  const kept = JSON.parse(localStorage.getItem(place) ?? 'null') as Kept | null;
  const key = kept?.body === text ? kept.key : newKey();
  localStorage.setItem(place, JSON.stringify({ body: text, key } satisfies Kept));
  try {
    const result = await ask(send({ 'Idempotency-Key': key }));
    localStorage.removeItem(place);
    return result;
  } catch (error) {
    if (error instanceof ApiProblem && error.isAnswered) localStorage.removeItem(place);
    throw error;
  }
}
