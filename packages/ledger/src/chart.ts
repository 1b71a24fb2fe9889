import { assert } from '@sheafbook/units';
import type { MoneyKind } from './account-key.ts';

/** One line of the chart of accounts. Units: none. Errors: none. */
export type ChartLine = {
  readonly kind: MoneyKind;
  readonly number: string;
  readonly name: string;
  readonly nameEs: string;
  readonly normal: 'debit' | 'credit' | 'zero';
};

/**
 * The chart of accounts: the accountant's number and its name in both languages of each money kind, and the side its balance stands on.
 * `zero` is a clearing account, which closes at nothing.
 * Units: none. Errors: none. Source: job map 4.4.
 */
export const CHART: readonly ChartLine[] = [
  { kind: 'bank', number: '1000', name: 'Bank', nameEs: 'Banco', normal: 'debit' },
  { kind: 'cash_tin', number: '1010', name: 'Cash tin', nameEs: 'Caja de efectivo', normal: 'debit' },
  {
    kind: 'household',
    number: '1100',
    name: 'Household balances',
    nameEs: 'Saldos de hogares',
    normal: 'debit',
  },
  {
    kind: 'supplier_claim',
    number: '1200',
    name: 'Supplier claims',
    nameEs: 'Reclamaciones a proveedores',
    normal: 'debit',
  },
  {
    kind: 'supplies',
    number: '1300',
    name: 'Supplies stock',
    nameEs: 'Existencias de suministros',
    normal: 'debit',
  },
  {
    kind: 'common_stock',
    number: '1400',
    name: 'Common food stock',
    nameEs: 'Reserva común de alimentos',
    normal: 'debit',
  },
  {
    kind: 'equipment',
    number: '1500',
    name: 'Equipment at cost',
    nameEs: 'Equipos al coste',
    normal: 'debit',
  },
  {
    kind: 'supplier',
    number: '2000',
    name: 'Suppliers payable',
    nameEs: 'Proveedores por pagar',
    normal: 'credit',
  },
  {
    kind: 'buy_deposit',
    number: '2100',
    name: 'Buy deposits held',
    nameEs: 'Depósitos de compras',
    normal: 'credit',
  },
  {
    kind: 'loan_deposit',
    number: '2150',
    name: 'Equipment deposits held',
    nameEs: 'Depósitos de equipos',
    normal: 'credit',
  },
  {
    kind: 'buy_clearing',
    number: '2200',
    name: 'Buy clearing',
    nameEs: 'Cuenta puente de compra',
    normal: 'zero',
  },
  {
    kind: 'session_clearing',
    number: '2300',
    name: 'Session clearing',
    nameEs: 'Cuenta puente de jornada',
    normal: 'zero',
  },
  { kind: 'store_fund', number: '3000', name: 'Store fund', nameEs: 'Fondo del almacén', normal: 'credit' },
  { kind: 'given_value', number: '3010', name: 'Given value', nameEs: 'Valor donado', normal: 'debit' },
  { kind: 'line_fees', number: '4000', name: 'Line fees', nameEs: 'Cuotas de línea', normal: 'credit' },
  {
    kind: 'equipment_fees',
    number: '4010',
    name: 'Equipment fees',
    nameEs: 'Cuotas de equipos',
    normal: 'credit',
  },
  {
    kind: 'cash_gifts',
    number: '4020',
    name: 'Cash gifts received',
    nameEs: 'Donativos en dinero',
    normal: 'credit',
  },
  { kind: 'losses', number: '5000', name: 'Losses', nameEs: 'Pérdidas', normal: 'debit' },
  { kind: 'bank_charges', number: '5010', name: 'Bank charges', nameEs: 'Gastos bancarios', normal: 'debit' },
  {
    kind: 'repairs',
    number: '5020',
    name: 'Repairs and parts',
    nameEs: 'Reparaciones y piezas',
    normal: 'debit',
  },
  {
    kind: 'debt_written_off',
    number: '5030',
    name: 'Debt written off',
    nameEs: 'Deudas perdonadas',
    normal: 'debit',
  },
];

/** Finds the chart line of a money kind. Units: none. Errors: AssertionError for a kind that holds no money. */
export function chartLine(kind: string): ChartLine {
  const line = CHART.find((candidate) => candidate.kind === kind);
  assert(line, `the chart has no line for ${kind}`);
  return line;
}

/** The name of each account by its number, in one language. Units: none. Errors: none. */
export const chartNames = (language: 'en' | 'es'): Record<string, string> =>
  Object.fromEntries(CHART.map(({ number, name, nameEs }) => [number, language === 'es' ? nameEs : name]));
