import { administer, importArchive, refuseUnless, type Tx } from '@sheafbook/db';
import type { PersonRow } from '@sheafbook/db/tables';
import type { Outside } from '../../platform/context.ts';
import { hashPassword } from '../../platform/password.ts';
import { type Audit, auditInside } from '../audit/use-cases.ts';
import { findLoginByEmail, insertLogin } from '../session/queries.ts';
import { listCoordinators, listPersonsNamed, updatePersonLogin } from './queries.ts';

/** Who shall sign in as whom: the coordinator, or a person by name. */
export type LoginWish = { readonly email: string; readonly personName: string | null };

/** `password` is there when the login was made just now; it is told once and kept nowhere. */
export type GivenLogin = {
  readonly personName: string;
  readonly email: string;
  readonly password: string | null;
};

/**
 * Brings a storehouse in from an archive: all of it or nothing. Its balances are recomputed from its movements and its
 * every invariant is tested before it is committed. An archive has no logins, so whoever runs the server says who is
 * who; at least the coordinator, who can then invite everybody else.
 */
export function importStorehouse(
  outside: Outside,
  of: { adminUrl: string; lines: AsyncIterable<string>; logins: readonly LoginWish[] },
) {
  return administer(of.adminUrl, (admin) =>
    importArchive(admin, of.lines, async (tx, { storehouse }) => {
      const audit = await auditInside(tx, storehouse.id);
      refuseUnless(
        audit.holds,
        `this book does not add up, so nothing of it was taken:\n${failuresOf(audit)}`,
      );
      const logins = [];
      for (const wish of of.logins)
        logins.push(await giveLogin(tx, outside, { ...wish, storehouseId: storehouse.id }));
      const coordinators = await listCoordinators(tx, storehouse.id);
      refuseUnless(
        coordinators.some(({ loginId }) => loginId !== null),
        `an archive has no logins, and without one for a coordinator nobody could get in. Say --coordinator-email; coordinators are ${namesOf(coordinators)}`,
      );
      return { audit, logins };
    }),
  );
}

const failuresOf = ({ findings }: Audit): string =>
  findings
    .filter((finding) => !finding.holds)
    .map(({ number, invariant, figure }) => `  ${number}  ${invariant} (${figure})`)
    .join('\n');

const namesOf = (persons: readonly PersonRow[]): string => persons.map(({ name }) => name).join(', ');

/** A login that this server knows already stays as it is; else one is made, with a password that nobody chose. */
async function giveLogin(
  tx: Tx,
  outside: Outside,
  { storehouseId, personName, email }: LoginWish & { readonly storehouseId: string },
): Promise<GivenLogin> {
  const person = await findWanted(tx, storehouseId, personName);
  const known = await findLoginByEmail(tx, email);
  const password = known ? null : Buffer.from(outside.randomBytes(12)).toString('base64url');
  const loginId =
    password === null
      ? (known?.login_id ?? '')
      : await insertLogin(tx, {
          email,
          name: person.name,
          passwordHash: await hashPassword(password),
          madeAt: outside.now(),
        });
  await updatePersonLogin(tx, person, loginId);
  return { personName: person.name, email, password };
}

async function findWanted(tx: Tx, storehouseId: string, personName: string | null): Promise<PersonRow> {
  if (personName === null) {
    const coordinators = await listCoordinators(tx, storehouseId);
    const [only, ...others] = coordinators;
    refuseUnless(only, 'this storehouse has no coordinator; say --login with the name of somebody else');
    refuseUnless(
      others.length === 0,
      `this storehouse has several coordinators (${namesOf(coordinators)}); say which by --login 'Name=email'`,
    );
    return only;
  }
  const [person, ...namesakes] = await listPersonsNamed(tx, storehouseId, personName);
  refuseUnless(person, `nobody of this storehouse is called ${personName}`);
  refuseUnless(namesakes.length === 0, `more than one person of this storehouse is called ${personName}`);
  return person;
}
