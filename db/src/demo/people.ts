import type { Duty } from '@sheafbook/api';

export type HouseholdName =
  | 'Ashdown'
  | 'Birchall'
  | 'Corran'
  | 'Dell'
  | 'Eskdale'
  | 'Fenner'
  | 'Garrow'
  | 'Hollis'
  | 'Ince'
  | 'Jessop'
  | 'Kemble'
  | 'Lorne'
  | 'Marrick'
  | 'Nettle';

/** An eater as their own household enters them; what is left out keeps the form's default. */
export type StoryEater = {
  name: string;
  birthOn: string;
  sex?: 'female' | 'male';
  activity?: 'sedentary' | 'moderate' | 'active';
  presentPercent?: number;
  heightCentimetres?: number;
  massKilograms?: number;
  typedKilocalories?: number;
  excludedAllergens?: readonly string[];
  excludedFoodCodes?: readonly string[];
  avoidsGluten?: boolean;
};

export type StoryHousehold = {
  name: HouseholdName;
  /** Whoever holds the household's login. */
  personName: string;
  duty?: Duty;
  eaters: readonly StoryEater[];
  /** How long it wants to last; households without one go by the form's defaults. */
  plan?: { needBasis: 'guideline' | 'energy'; targetDays: number };
  phone?: string;
};

/** Invented people, in the order of their seats. Everyone signs in with the one password of the demo. */
export const HOUSEHOLDS: readonly StoryHousehold[] = [
  {
    name: 'Ashdown',
    personName: 'Ada Ashdown',
    eaters: [
      { name: 'Ada', birthOn: '1986-04-11', sex: 'female', activity: 'moderate' },
      { name: 'Alan', birthOn: '1984-09-02', sex: 'male', activity: 'active' },
      { name: 'Abel', birthOn: '2013-01-20', sex: 'male', activity: 'active' },
      { name: 'Anna', birthOn: '2016-06', sex: 'female' },
      { name: 'Amos', birthOn: '2019-11-05', sex: 'male' },
    ],
    plan: { needBasis: 'guideline', targetDays: 180 },
    phone: '555 0101',
  },
  {
    name: 'Birchall',
    personName: 'Beth Birchall',
    duty: 'reviewer',
    eaters: [
      { name: 'Beth', birthOn: '1979-02-17', sex: 'female' },
      { name: 'Bram', birthOn: '1977-12-01', sex: 'male' },
      { name: 'Bruno', birthOn: '2009-05-09', sex: 'male', activity: 'active' },
      { name: 'Britt', birthOn: '2011-08-23', sex: 'female', activity: 'active' },
    ],
    plan: { needBasis: 'energy', targetDays: 120 },
  },
  {
    name: 'Corran',
    personName: 'Cora Corran',
    duty: 'coordinator',
    eaters: [
      { name: 'Cora', birthOn: '1991-07-30', sex: 'female', activity: 'active' },
      { name: 'Colm', birthOn: '1990-03-14', sex: 'male' },
      { name: 'Callum', birthOn: '2025-03', sex: 'male', typedKilocalories: 950 }, // under two: typed, never guessed
    ],
    plan: { needBasis: 'guideline', targetDays: 90 },
    phone: '555 0103',
  },
  {
    name: 'Dell',
    personName: 'Dora Dell',
    eaters: [{ name: 'Dora', birthOn: '1951-10-08', sex: 'female', activity: 'sedentary' }],
    plan: { needBasis: 'guideline', targetDays: 90 },
  },
  {
    name: 'Eskdale',
    personName: 'Edith Eskdale',
    eaters: [
      { name: 'Edith', birthOn: '1972-01-28', sex: 'female', activity: 'sedentary' },
      { name: 'Ewan', birthOn: '1970-06-06', sex: 'male' },
      { name: 'Elsie', birthOn: '2006-09-19', sex: 'female', presentPercent: 50 }, // away at college in term
    ],
    plan: { needBasis: 'energy', targetDays: 365 },
  },
  {
    name: 'Fenner',
    personName: 'Faye Fenner',
    eaters: [
      { name: 'Faye', birthOn: '1989-05-12', sex: 'female' },
      { name: 'Felix', birthOn: '1988-11-27', sex: 'male' },
      { name: 'Finn', birthOn: '2018-02-03', sex: 'male', excludedAllergens: ['milk'] },
    ],
  },
  {
    name: 'Garrow',
    personName: 'Gwen Garrow',
    duty: 'equipment_keeper',
    eaters: [
      { name: 'Gwen', birthOn: '1983-08-15', sex: 'female', excludedAllergens: ['wheat'] },
      { name: 'Glen', birthOn: '1981-04-04', sex: 'male', activity: 'active' },
    ],
    plan: { needBasis: 'guideline', targetDays: 120 },
  },
  {
    name: 'Hollis',
    personName: 'Hugh Hollis',
    eaters: [
      { name: 'Hugh', birthOn: '1975-03-21', sex: 'male', heightCentimetres: 183, massKilograms: 88 },
      { name: 'Hana', birthOn: '1978-12-13', sex: 'female', heightCentimetres: 165, massKilograms: 61 },
      { name: 'Hazel', birthOn: '2008-07-07', sex: 'female' },
      { name: 'Henry', birthOn: '2012-10-31', sex: 'male', activity: 'active' },
    ],
    plan: { needBasis: 'energy', targetDays: 90 },
  },
  {
    name: 'Ince',
    personName: 'Ida Ince',
    eaters: [
      { name: 'Ida', birthOn: '1944-05-25', sex: 'female', activity: 'sedentary' },
      { name: 'Ivor', birthOn: '1942-09-09', sex: 'male', activity: 'sedentary' },
    ],
  },
  {
    name: 'Jessop',
    personName: 'Joan Jessop',
    duty: 'packing_lead',
    eaters: [
      { name: 'Joan', birthOn: '1985-01-09', sex: 'female', activity: 'active' },
      { name: 'Jack', birthOn: '1983-02-22', sex: 'male', activity: 'moderate' },
      { name: 'Jude', birthOn: '2014-04-16', avoidsGluten: true },
    ],
    plan: { needBasis: 'guideline', targetDays: 120 },
  },
  {
    name: 'Kemble',
    personName: 'Kit Kemble',
    eaters: [
      { name: 'Kit', birthOn: '1996-06-18', sex: 'male', activity: 'active' },
      { name: 'Kay', birthOn: '1997-03-02', sex: 'female', activity: 'moderate' },
    ],
  },
  {
    name: 'Lorne',
    personName: 'Lena Lorne',
    eaters: [
      { name: 'Lena', birthOn: '1968-10-20', sex: 'female' },
      { name: 'Leif', birthOn: '2001', sex: 'male', presentPercent: 40, excludedFoodCodes: ['lentils'] },
    ],
    plan: { needBasis: 'guideline', targetDays: 60 },
  },
  {
    name: 'Marrick',
    personName: 'Mara Marrick',
    eaters: [
      { name: 'Mara', birthOn: '1994-12-24', sex: 'female', typedKilocalories: 2450 }, // expecting: typed, never guessed
      { name: 'Miles', birthOn: '1993-01-11', sex: 'male' },
      { name: 'May', birthOn: '2021-05-01', sex: 'female' },
    ],
  },
  {
    name: 'Nettle',
    personName: 'Ned Nettle',
    duty: 'treasurer',
    eaters: [
      { name: 'Ned', birthOn: '1960-07-19', sex: 'male', activity: 'sedentary' },
      { name: 'Nora', birthOn: '1962-02-05', sex: 'female' },
    ],
    plan: { needBasis: 'guideline', targetDays: 120 },
    phone: '555 0114',
  },
];

/** The first name in small letters, at a domain that never answers (RFC 2606). */
export const emailOf = ({ personName }: Pick<StoryHousehold, 'personName'>): string =>
  `${personName.split(' ')[0]?.toLowerCase() ?? ''}@alder-row.example`;

/** For trying the demo out, and for nothing else. */
export const DEMO_PASSWORD = 'sheaves on the table';
