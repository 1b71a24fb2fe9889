import type { Duty } from '@sheafbook/api';
import { type Answer, type Caller, cookieOf, type TestApp } from './app.ts';
import { A_PASSWORD, type TestStorehouse } from './storehouse.ts';

/** A household that joined by an invitation, seen by its first person. */
export type TestHousehold = { householdId: string; personId: string; caller: Caller };

/** A household with one person, who has the login `name@example.org` and the duties asked for. */
export async function aHousehold(
  app: TestApp,
  storehouse: TestStorehouse,
  name: string,
  options: { email?: string; duties?: readonly Duty[] } = {},
): Promise<TestHousehold> {
  const household = await join(app, await anInvitation(storehouse, { householdName: name }), {
    personName: `${name} Person`,
    email: options.email ?? `${slug(name)}@example.org`,
  });
  for (const duty of options.duties ?? []) await grantDuty(storehouse, household.personId, duty);
  return household;
}

/** A further person of a household, with a login of their own. */
export async function aPersonOf(
  app: TestApp,
  storehouse: TestStorehouse,
  household: TestHousehold,
  personName: string,
): Promise<TestHousehold> {
  const { householdId } = household;
  const invitation = await anInvitation(storehouse, { householdId });
  return join(app, invitation, { personName, email: `${slug(personName)}@example.org` });
}

/** The address of an unused invitation: `GET` looks at it, `POST` joins by it. */
export async function anInvitation(
  storehouse: TestStorehouse,
  wish: { householdName?: string; householdId?: string; days?: number } = {},
): Promise<string> {
  const { body } = expectStatus(
    await storehouse.coordinator.post(`${storehouse.path}/invitations`, wish),
    201,
  );
  return `/api/invitations/${storehouse.storehouseId}/${body.token}`;
}

export async function grantDuty(storehouse: TestStorehouse, personId: string, duty: Duty): Promise<void> {
  const path = `${storehouse.path}/persons/${personId}/duties`;
  expectStatus(await storehouse.coordinator.post(path, { duty }), 201);
}

async function join(app: TestApp, invitation: string, { personName, email }: Record<string, string>) {
  const login = { email, password: A_PASSWORD };
  const answer = expectStatus(await app.as().post(invitation, { personName, login }), 201);
  const { householdId, personId } = answer.body;
  return { householdId, personId, caller: app.as(cookieOf(answer)) };
}

/** A builder that failed says so where it failed. */
function expectStatus(answer: Answer, status: number): Answer {
  if (answer.status !== status) throw new Error(JSON.stringify(answer.body));
  return answer;
}

const slug = (name: string) => name.toLowerCase().replaceAll(/[^a-z0-9]+/g, '-');
