import type { House } from './house.ts';
import {
  BellIcon,
  BooksIcon,
  BuysIcon,
  CoverageIcon,
  EquipmentIcon,
  GivingIcon,
  HomeIcon,
  HouseholdIcon,
  PackingIcon,
  PeopleIcon,
  ShelfIcon,
  StatementIcon,
  TraceIcon,
} from './icons.tsx';

const isMember = (house: House) => house.household !== null;

/** Where a person can go, in the order of the rail: only places that exist and that are theirs. */
const readsBooks = ({ duties }: House) => duties.includes('treasurer') || duties.includes('reviewer');

/** A coordinator counts, draws traces and signs, without the rest of the books. */
const reviewsOnly = (house: House) => house.duties.includes('coordinator') && !readsBooks(house);

export const PLACES = [
  { to: '/s/$storehouse', name: 'home', icon: HomeIcon, isFor: () => true },
  { to: '/s/$storehouse/buys', name: 'buys', icon: BuysIcon, isFor: () => true },
  { to: '/s/$storehouse/packing', name: 'packing', icon: PackingIcon, isFor: () => true },
  { to: '/s/$storehouse/shelf', name: 'shelf', icon: ShelfIcon, isFor: isMember },
  { to: '/s/$storehouse/statement', name: 'statement', icon: StatementIcon, isFor: isMember },
  { to: '/s/$storehouse/coverage', name: 'coverage', icon: CoverageIcon, isFor: isMember },
  { to: '/s/$storehouse/equipment', name: 'equipment', icon: EquipmentIcon, isFor: () => true },
  { to: '/s/$storehouse/giving', name: 'giving', icon: GivingIcon, isFor: () => true },
  { to: '/s/$storehouse/notices', name: 'notices', icon: BellIcon, isFor: () => true },
  { to: '/s/$storehouse/trace', name: 'trace', icon: TraceIcon, isFor: () => true },
  { to: '/s/$storehouse/household', name: 'household', icon: HouseholdIcon, isFor: () => true },
  { to: '/s/$storehouse/books', name: 'books', icon: BooksIcon, isFor: readsBooks },
  { to: '/s/$storehouse/people', name: 'people', icon: PeopleIcon, isFor: () => true },
  { to: '/s/$storehouse/books/audit', name: 'review', icon: BooksIcon, isFor: reviewsOnly },
] as const;
