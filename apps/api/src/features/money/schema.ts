import { z } from 'zod';

/** A calendar day on which something may have happened to a storehouse; older ones are slips of the pen. */
export const bookDay = z.iso
  .date('A day reads YYYY-MM-DD and must exist.')
  .refine((day) => day >= '1900-01-01', 'A day of the book is from 1900 on.');

export const amountMinorUnits = z.int().positive('An amount is above zero.');
export const till = z.enum(['bank', 'cash']);
export const note = z.string().trim().max(500, 'A note has 500 characters at most.').default('');
export const reason = z
  .string()
  .trim()
  .min(1, 'Say why, for whoever reads the book later.')
  .max(500, 'A reason has 500 characters at most.');
/** May be said; it must then be the storehouse's own, since one book keeps one currency. */
export const currency = z.string().max(10).optional();

/** What each money command has: how much, on which day (today unless said) and a note. */
const money = { minorUnits: amountMinorUnits, currency, onDay: bookDay.optional(), note };

export const payment = z.strictObject({
  ...money,
  householdId: z.uuid('A receipt names the household that paid.'),
  till,
  isKnownDuplicate: z.boolean().default(false),
});
export type Payment = z.infer<typeof payment>;

export const refund = z.strictObject({ ...money, householdId: z.uuid(), till });
export type Refund = z.infer<typeof refund>;

export const plainMoney = z.strictObject(money);
export type PlainMoney = z.infer<typeof plainMoney>;

export const tillMoney = z.strictObject({ ...money, till });
export type TillMoney = z.infer<typeof tillMoney>;

/** For a thing of the group's, or for none of them alone. */
export const fundSpending = z.strictObject({ ...money, till, itemId: z.uuid().optional() });
export type FundSpending = z.infer<typeof fundSpending>;

export const supplierPayment = z.strictObject({
  ...money,
  supplierId: z.uuid(),
  till,
  invoiceId: z.uuid().optional(),
  isPrepayment: z.boolean().default(false),
});
export type SupplierPayment = z.infer<typeof supplierPayment>;

const explained = { minorUnits: amountMinorUnits, currency, onDay: bookDay.optional(), reason };

export const hardshipCover = z.strictObject({ ...explained, householdId: z.uuid() });
export type HardshipCover = z.infer<typeof hardshipCover>;

/** Signed as the book signs: above zero a household owes and a bank holds, below zero we owe. */
export const openingBalance = z
  .strictObject({
    of: z.enum(['household', 'supplier', 'bank', 'cash']),
    householdId: z.uuid().optional(),
    supplierId: z.uuid().optional(),
    balanceMinorUnits: z.int().refine((amount) => amount !== 0, 'A balance of nothing needs no entry.'),
    currency,
    onDay: bookDay.optional(),
    reason,
  })
  .refine(({ of, householdId }) => (of === 'household') === (householdId !== undefined), {
    path: ['householdId'],
    message: 'Name the household when the balance is one, and only then.',
  })
  .refine(({ of, supplierId }) => (of === 'supplier') === (supplierId !== undefined), {
    path: ['supplierId'],
    message: 'Name the supplier when the balance is one, and only then.',
  });
export type OpeningBalance = z.infer<typeof openingBalance>;

export const yearEndWish = z.strictObject({ throughOn: bookDay, note });
export const yearEndQuery = z.strictObject({ throughOn: bookDay });
export type YearEndWish = z.infer<typeof yearEndWish>;

const oneWay = 'Name the till, or say that it goes by the balance: one of the two.';

export const deposit = z
  .strictObject({
    ...money,
    householdId: z.uuid('A deposit names the household that pays it.'),
    till: till.optional(),
    fromBalance: z.boolean().default(false),
  })
  .refine((wish) => (wish.till !== undefined) !== wish.fromBalance, { path: ['till'], message: oneWay });
export type Deposit = z.infer<typeof deposit>;

export const depositRefund = z
  .strictObject({
    ...money,
    householdId: z.uuid('A refund names the household that gets it.'),
    till: till.optional(),
    toBalance: z.boolean().default(false),
  })
  .refine((wish) => (wish.till !== undefined) !== wish.toBalance, { path: ['till'], message: oneWay });
export type DepositRefund = z.infer<typeof depositRefund>;
