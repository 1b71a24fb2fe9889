import { describe, expect, test } from 'vitest';
import { mayEditContact, mayReadForTask } from '../../apps/api/src/features/contact/policy.ts';
import { areSeparate, mayGiveDuties, needsSuccessor } from '../../apps/api/src/features/duty/policy.ts';
import { mayHaveEaters } from '../../apps/api/src/features/eater/policy.ts';
import {
  mayEndGrant,
  mayListHelpersOf,
  mayNameHelpers,
  mayNameHelpersOf,
} from '../../apps/api/src/features/helper/policy.ts';
import {
  isTheirs,
  mayFoundPaperHousehold,
  mayRename,
  mayRenameThis,
} from '../../apps/api/src/features/household/policy.ts';
import { mayInvite } from '../../apps/api/src/features/invitation/policy.ts';
import { mayAskToLeave, mayTakeOut, mayTakeOutPerson } from '../../apps/api/src/features/leaving/policy.ts';
import { mayHavePlan } from '../../apps/api/src/features/plan/policy.ts';
import { mayReadOwnLog, mayReviewLooks } from '../../apps/api/src/features/private-read/policy.ts';
import { mayTakeAlong } from '../../apps/api/src/features/take-along/policy.ts';
import { type Actor, DUTIES, type Duty } from '../../apps/api/src/platform/actor.ts';

const anActor = (facts: Partial<Actor> = {}): Actor => ({
  loginId: 'login',
  personId: 'me',
  storehouseId: 'storehouse',
  currency: 'USD',
  timeZone: 'America/Chicago',
  duties: new Set<Duty>(),
  householdId: 'mine',
  isHelping: false,
  ...facts,
});
const withDuty = (duty: Duty) => anActor({ duties: new Set([duty]) });

/** Who asks: a plain member, each duty alone, somebody of no household, and a helper. */
const WHO = {
  member: anActor(),
  ...Object.fromEntries(DUTIES.map((duty) => [duty, withDuty(duty)])),
  homeless: anActor({ householdId: null }),
  helper: anActor({ householdId: 'theirs', isHelping: true }),
};
const saying = (policy: (actor: Actor) => boolean) =>
  Object.entries(WHO).flatMap(([name, actor]) => (policy(actor) ? [name] : []));
const EVERY_HOUSEHOLD = ['member', ...DUTIES, 'helper'];

describe('of a member, each duty alone, somebody of no household, and a helper', () => {
  test.for([
    { may: 'invite', policy: mayInvite, yes: ['coordinator'] },
    { may: 'give and end duties', policy: mayGiveDuties, yes: ['coordinator'] },
    { may: 'enter a household on paper', policy: mayFoundPaperHousehold, yes: ['coordinator'] },
    { may: 'rename some household', policy: mayRename, yes: EVERY_HOUSEHOLD },
    { may: 'edit their own contact', policy: mayEditContact, yes: EVERY_HOUSEHOLD },
    // Job map 14, "phone / address": task for C, T, P and K, opt-in for members, none for the reviewer.
    {
      may: 'read a neighbour’s contact for a task',
      policy: mayReadForTask,
      yes: ['coordinator', 'treasurer', 'packing_lead', 'equipment_keeper'],
    },
    // Job map 14, "eater age, sex, activity" and "allergies of eaters": the household's own, no duty.
    { may: 'have eaters', policy: mayHaveEaters, yes: EVERY_HOUSEHOLD },
    { may: 'have a plan', policy: mayHavePlan, yes: EVERY_HOUSEHOLD },
    { may: 'name helpers', policy: mayNameHelpers, yes: ['member', ...DUTIES] },
    { may: 'see who looked at their own things', policy: mayReadOwnLog, yes: EVERY_HOUSEHOLD },
    { may: 'sum up who looked at what', policy: mayReviewLooks, yes: ['reviewer'] },
    { may: 'ask to leave', policy: mayAskToLeave, yes: ['member', ...DUTIES] },
    { may: 'take their data along', policy: mayTakeAlong, yes: EVERY_HOUSEHOLD },
  ])('these may $may: $yes', ({ policy, yes }) => {
    expect(saying(policy)).toEqual(yes);
  });
});

describe('over another household, which has a login', () => {
  const other = { householdId: 'other', hasLogin: true };
  const onPaper = { householdId: 'other', hasLogin: false };
  test.for([
    { may: 'act for it', policy: (actor: Actor) => isTheirs(actor, 'other'), yes: [] },
    { may: 'rename it', policy: (actor: Actor) => mayRenameThis(actor, 'other'), yes: ['coordinator'] },
    { may: 'name its helpers', policy: (actor: Actor) => mayNameHelpersOf(actor, other), yes: [] },
    {
      may: 'name its helpers while it is on paper',
      policy: (actor: Actor) => mayNameHelpersOf(actor, onPaper),
      yes: ['coordinator'],
    },
    {
      may: 'list its helpers',
      policy: (actor: Actor) => mayListHelpersOf(actor, 'other'),
      yes: ['coordinator'],
    },
    {
      may: 'end the right of its helper, who is somebody else',
      policy: (actor: Actor) => mayEndGrant(actor, { householdId: 'other', personId: 'helper' }),
      yes: ['coordinator'],
    },
    { may: 'take it out', policy: (actor: Actor) => mayTakeOut(actor, other), yes: [] },
    {
      may: 'take it out while it is on paper',
      policy: (actor: Actor) => mayTakeOut(actor, onPaper),
      yes: ['coordinator'],
    },
  ])('these may $may: $yes', ({ policy, yes }) => {
    expect(saying(policy)).toEqual(yes);
  });

  test('a helper steps down, but neither names helpers nor takes the household out', () => {
    const theirs = { householdId: 'theirs', hasLogin: true };
    expect(isTheirs(WHO.helper, 'theirs')).toBe(true);
    expect(mayRenameThis(WHO.helper, 'theirs')).toBe(true);
    expect(mayEndGrant(WHO.helper, { householdId: 'theirs', personId: 'me' })).toBe(true);
    expect(mayEndGrant(WHO.helper, { householdId: 'theirs', personId: 'another helper' })).toBe(false);
    expect(mayNameHelpersOf(WHO.helper, theirs)).toBe(false);
    expect(mayTakeOut(WHO.helper, theirs)).toBe(false);
  });
});

describe('a person is taken out', () => {
  test.for([
    { who: 'by themselves', person: { personId: 'me', loginId: 'login', householdId: 'mine' }, yes: true },
    {
      who: 'without a login, by their household',
      person: { personId: 'elder', loginId: null, householdId: 'mine' },
      yes: true,
    },
    {
      who: 'with a login, by their household',
      person: { personId: 'elder', loginId: 'other', householdId: 'mine' },
      yes: false,
    },
    {
      who: 'without a login, by a neighbour',
      person: { personId: 'elder', loginId: null, householdId: 'other' },
      yes: false,
    },
    {
      who: 'of no household, by another of none',
      person: { personId: 'elder', loginId: null, householdId: null },
      yes: false,
    },
  ])('$who: $yes', ({ person, yes }) => {
    expect(
      mayTakeOutPerson(anActor({ householdId: person.householdId === null ? null : 'mine' }), person),
    ).toBe(yes);
  });

  test('by no helper', () => {
    const person = { personId: 'me', loginId: 'login', householdId: 'mine' };
    expect(mayTakeOutPerson(anActor({ householdId: 'theirs', isHelping: true }), person)).toBe(false);
  });
});

describe('duties', () => {
  const treasurer = { personId: 'tom', householdId: 'oak', duty: 'treasurer' } as const;
  test.for([
    { who: 'the treasurer', candidate: { personId: 'tom', householdId: 'oak' }, isSeparate: false },
    {
      who: 'one of the treasurer’s household',
      candidate: { personId: 'ann', householdId: 'oak' },
      isSeparate: false,
    },
    { who: 'one of another household', candidate: { personId: 'ann', householdId: 'elm' }, isSeparate: true },
    { who: 'one of no household', candidate: { personId: 'ann', householdId: null }, isSeparate: true },
  ])('$who as reviewer beside the treasurer: $isSeparate', ({ candidate, isSeparate }) => {
    expect(areSeparate(candidate, 'reviewer', [treasurer])).toBe(isSeparate);
    const reviewer = { ...candidate, duty: 'reviewer' } as const;
    expect(areSeparate(treasurer, 'treasurer', [reviewer])).toBe(isSeparate);
    expect(areSeparate(candidate, 'coordinator', [treasurer])).toBe(true);
  });

  test('a treasurer of no household is only kept from reviewing themselves', () => {
    const loose = { personId: 'tom', householdId: null, duty: 'treasurer' } as const;
    expect(areSeparate({ personId: 'ann', householdId: null }, 'reviewer', [loose])).toBe(true);
    expect(areSeparate({ personId: 'tom', householdId: null }, 'reviewer', [loose])).toBe(false);
  });

  test.for(DUTIES)('%s can stand empty only where nobody must answer for it', (duty) => {
    const holder = { personId: 'tom', householdId: 'oak', duty };
    const second = { personId: 'ann', householdId: 'oak', duty };
    const isKept = duty === 'coordinator' || duty === 'treasurer';
    expect(needsSuccessor(['tom'], duty, [holder])).toBe(isKept);
    expect(needsSuccessor(['tom'], duty, [holder, second])).toBe(false);
    expect(needsSuccessor(['tom', 'ann'], duty, [holder, second])).toBe(isKept);
  });
});
