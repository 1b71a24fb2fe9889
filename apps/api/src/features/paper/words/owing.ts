/** The words of the paper that names who owes what. */
export const owingEn = {
  lead: 'Owed to the storehouse',
  days0To30: 'to 30 days',
  days31To60: '31 to 60',
  days61To90: '61 to 90',
  over90: 'over 90',
  credit: 'In credit',
  balance: 'Balance',
  privately:
    'For the treasurer’s eyes. It names debts, so it hangs on no wall and goes into no shared folder.',
};

export const owingEs: typeof owingEn = {
  lead: 'Se debe al almacén',
  days0To30: 'hasta 30 días',
  days31To60: '31 a 60',
  days61To90: '61 a 90',
  over90: 'más de 90',
  credit: 'A su favor',
  balance: 'Saldo',
  privately:
    'Solo para la tesorería. Nombra deudas: no se cuelga en ninguna pared ni se deja en una carpeta común.',
};
