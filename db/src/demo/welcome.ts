import { DEMO_PASSWORD, emailOf, HOUSEHOLDS } from './people.ts';

const DUTY_WORDS: Readonly<Record<string, string>> = {
  coordinator: 'coordinator',
  treasurer: 'treasurer',
  packing_lead: 'packing lead',
  equipment_keeper: 'equipment keeper',
  reviewer: 'reviewer',
};

/** Where to look, and how to sign in as each duty. */
export function welcome({ publicUrl, storehouseId }: { publicUrl: string; storehouseId: string }): string {
  const withDuty = HOUSEHOLDS.filter((household) => household.duty);
  const member = HOUSEHOLDS.find((household) => !household.duty);
  const people = [...withDuty, ...(member ? [member] : [])].map((household) => {
    const duty = DUTY_WORDS[household.duty ?? ''] ?? 'no duty, a member';
    return `  ${emailOf(household).padEnd(26)} ${household.personName.padEnd(16)} ${duty}`;
  });
  const coordinator = HOUSEHOLDS.find((household) => household.duty === 'coordinator');
  const body = JSON.stringify({ email: coordinator && emailOf(coordinator), password: DEMO_PASSWORD });
  return [
    `The demo is open at ${publicUrl}`,
    `  ${publicUrl}/api/docs            every route, to read`,
    `  ${publicUrl}/api/openapi.json    the same for machines`,
    '',
    `Everybody signs in with the password "${DEMO_PASSWORD}":`,
    ...people,
    '  (the others likewise: first name @alder-row.example)',
    '',
    'From a terminal, for instance:',
    `  curl -c jar -H 'Content-Type: application/json' -d '${body}' ${publicUrl}/api/session`,
    `  curl -b jar ${publicUrl}/api/storehouses/${storehouseId}/buys`,
    `  curl -b jar ${publicUrl}/api/storehouses/${storehouseId}/coverage`,
    '',
    'Ctrl-C closes it. What you change stays, and the story is not told twice.',
  ].join('\n');
}
