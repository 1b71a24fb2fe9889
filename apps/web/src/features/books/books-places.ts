import type { House } from '../../ui/house.ts';

const readsBooks = ({ duties }: House) => duties.includes('treasurer') || duties.includes('reviewer');

/** What a reviewer looks at, the coordinator looks at and signs too. */
const reviews = (house: House) => readsBooks(house) || house.duties.includes('coordinator');

/** The pages of the books, in the order a desk is worked through. Each has its name in the words of the books. */
export const BOOKS_PLACES = [
  { to: '/s/$storehouse/books', name: 'desk', isFor: readsBooks },
  { to: '/s/$storehouse/books/owing', name: 'owing', isFor: readsBooks },
  { to: '/s/$storehouse/books/ageing', name: 'ageing', isFor: readsBooks },
  { to: '/s/$storehouse/books/bank', name: 'bank', isFor: readsBooks },
  { to: '/s/$storehouse/books/tin', name: 'tin', isFor: readsBooks },
  { to: '/s/$storehouse/books/payments', name: 'payments', isFor: readsBooks },
  { to: '/s/$storehouse/books/deposits', name: 'deposits', isFor: readsBooks },
  { to: '/s/$storehouse/books/suppliers', name: 'suppliers', isFor: readsBooks },
  { to: '/s/$storehouse/books/bills', name: 'bills', isFor: readsBooks },
  { to: '/s/$storehouse/books/claims', name: 'claims', isFor: readsBooks },
  { to: '/s/$storehouse/books/statements', name: 'statements', isFor: readsBooks },
  { to: '/s/$storehouse/books/write-offs', name: 'writeOffs', isFor: readsBooks },
  { to: '/s/$storehouse/books/fund', name: 'fund', isFor: reviews },
  { to: '/s/$storehouse/books/entries', name: 'journal', isFor: readsBooks },
  { to: '/s/$storehouse/books/trial-balance', name: 'trialBalance', isFor: readsBooks },
  { to: '/s/$storehouse/books/audit', name: 'audit', isFor: reviews },
  { to: '/s/$storehouse/books/traces', name: 'traces', isFor: reviews },
  { to: '/s/$storehouse/books/counts', name: 'counts', isFor: reviews },
  { to: '/s/$storehouse/books/year', name: 'year', isFor: reviews },
] as const;
