/** Who may pass the doors of debts written off, of what is promised out of the store fund, of planned ends of duties, and of shelf prices; see `LEAST_DUTY`. */
export const FUND_DUTIES: Readonly<Record<string, string>> = {
  'PUT /persons/:person/duties/:duty/planned-end': 'coordinator',
  'GET /savings': 'coordinator treasurer reviewer',
  'GET /shelf-prices': 'coordinator treasurer reviewer',
  'POST /shelf-prices': 'coordinator',
  'DELETE /shelf-prices/:shelfPrice': 'coordinator',
  'GET /write-offs': 'treasurer coordinator reviewer',
  'POST /write-offs': 'treasurer',
  'POST /write-offs/:writeOff/agreement': 'coordinator',
  'POST /write-offs/:writeOff/withdrawal': 'treasurer',
  'GET /fund-promises': 'treasurer coordinator reviewer',
  'POST /fund-promises': 'treasurer coordinator',
  'POST /fund-promises/:fundPromise/payment': 'treasurer',
  'POST /fund-promises/:fundPromise/fulfilment': 'treasurer',
  'POST /fund-promises/:fundPromise/withdrawal': 'treasurer coordinator',
};

/** A body that is well formed for each of them that takes one. */
export const FUND_BODIES: Readonly<Record<string, Record<string, unknown>>> = {
  'POST /shelf-prices': {
    ...{
      foodId: '01890a5d-ac96-774b-bcce-b302099a8057',
      seenOn: '2026-08-01',
      minorUnits: 349,
      milligrams: 680_389,
    },
    seenWhere: 'a shop in town',
  },
  'PUT /persons/:person/duties/:duty/planned-end': { endsOn: '2027-06-30' },
  'POST /fund-promises': {
    ...{ minorUnits: 500, currency: 'USD', purpose: 'new seals' },
    overrideReason: 'The seals can’t wait for the year’s end.',
  },
  'POST /fund-promises/:fundPromise/payment': { minorUnits: 480, till: 'bank', note: 'seals' },
  'POST /fund-promises/:fundPromise/fulfilment': { entryNo: 1 },
  'POST /fund-promises/:fundPromise/withdrawal': { reason: 'They fit no more.' },
};
