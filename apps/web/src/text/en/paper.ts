/** Papers and what a pen wrote on them. */
export const en = {
  paper: 'Paper',
  papersWords: 'Opens as a PDF, with a code that leads back here.',
  codeOfPaper: 'Code on a paper',
  follow: 'Follow the code',
  size: 'Sheet',
  sizes: { a4: 'A4', letter: 'Letter' },
  language: 'Language',
  languages: { en: 'English', es: 'Español' },
  unitFirst: 'Unit first',
  units: { lb: 'pounds', kg: 'kilograms' },
  large: 'Large print',
  kinds: {
    'buy-sheet': 'Buy sheet',
    'pledge-slip': 'Pledge slip',
    'pledge-slip-blank': 'Empty pledge slip',
    'quote-comparison': 'Quotes compared',
    order: 'Order',
    'landing-sheet': 'Landing sheet',
    'claim-letter': 'Claim letter',
    'split-sheet': 'Split sheet',
    statement: 'Statement',
    'who-owes': 'Who owes',
    month: 'The month on one page',
    'run-sheet': 'Run sheet',
    'seam-log': 'Seam log',
    'loan-slip': 'Loan slip',
    'quarantine-tag': 'Quarantine tag',
  } as Record<string, string>,

  // What a code leads back to
  stands: (kind: string, paperNo: number, at: string) => `${kind}, paper no. ${paperNo}, printed ${at}.`,
  asOf: (entryNo: number) => `It tells what the book held as of entry ${entryNo}.`,
  goThere: 'Open what it is about',
  noSuchCode: 'If the code was typed, read it again: the last character tells a wrong one.',

  // Keying in
  keyIn: 'Key in what the pen wrote',
  keySlip: (buy: string) => `Key in a pledge slip of ${buy}`,
  keySlipPosts: (household: string) =>
    `Pledges for ${household}, each food with the day and hour on the slip.`,
  notGathering: 'The buy takes no pledges now, so a slip can’t be keyed in.',
  forHousehold: 'For household',
  writtenDay: 'Day on the paper',
  writtenTime: 'Hour on the paper',
  whenNeeded: 'Write the day and the hour that stand on the paper.',
  food: 'Food',
  least: 'Least',
  wanted: 'Wanted',
  most: 'Most',
  wholeBags: 'Whole bags',
  massProblem: 'Write a mass, such as 25, 25 lb or 12.5 kg.',
  keyed: (count: number) => (count === 1 ? '1 food is keyed in.' : `${count} foods are keyed in.`),
  keySheet: (buy: string) => `Key in a landing sheet of ${buy}`,
  keySheetPosts:
    'Writes down the lorry and how many bags it brought, with the day and hour on the sheet. Bags are numbered on the landing page.',
  notLanding: 'Nothing of this buy lands now, so a sheet can’t be keyed in.',
  supplier: 'Supplier',
  carrier: 'Carrier',
  countedBy: 'Counted by',
  carrierNote: 'Note on the carrier’s paper',
  counted: (food: string, bag: string) => `${food}, ${bag}: bags counted`,
  countProblem: 'Write a whole number; 0 is a count too.',
  sheetKeyed: 'The lorry and its count are keyed in.',
  toLanding: 'Number the bags',

  keyPickUp: (buy: string) => `Key in who fetched from ${buy}`,
  keyPickUpPosts: (mass: string, household: string) =>
    `Writes down that all that waited, ${mass}, left with ${household} at that hour. What is on hold stays.`,
  notFetched: 'Nothing is fetched before the buy is shared out, so no signature can be keyed in.',
  signedOnPaper: 'Name of whoever signed',
  pickUpKeyed: (household: string) => `The pick-up of ${household} is keyed in.`,
  allFetched: 'Every household has fetched what was free to go.',

  // What was keyed in
  byPen: (what: string, written: string, keyed: string, by: string) =>
    `${what}: by pen on ${written}, keyed in on ${keyed} by ${by}`,
  keyings: 'Keyed in from paper',
  written: (written: string, keyed: string) => `written ${written}, keyed ${keyed}`,
  enteredFor: 'entered for the household',
  keyingKinds: {
    pledge: 'Pledge',
    delivery: 'Lorry',
    count: 'Count',
    bag: 'Bag',
    weight: 'Weight',
    'pick-up': 'Pick-up',
  } as Record<string, string>,
};

export type PaperWords = typeof en;
