import type { PersonRow } from '@sheafbook/db/tables';

/** What everyone in the storehouse may see of a person. */
export function presentPerson(row: {
  person: PersonRow;
  householdName: string | null;
  duties: readonly string[];
}) {
  const { person, householdName, duties } = row;
  return {
    id: person.personId,
    name: person.name,
    householdId: person.householdId,
    householdName,
    duties,
    joinedOn: person.joinedOn,
  };
}
