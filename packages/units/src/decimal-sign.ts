/** Which sign a sheet puts before the decimals. Units: none. Errors: none. */
export type DecimalSign = 'point' | 'comma';

/** Why the numbers of a text can't be settled. Units: none. Errors: none. */
export type DecimalSignProblem = 'ambiguous-number' | 'not-a-number';

const NUMBER = /[.,]?\d(?:[\d.,\u00a0\u202f]*\d)?/g;
const GROUPED_IN_ONE_OF_TWO_WAYS = /^[1-9]\d{0,2}[.,]\d{3}$/;

/**
 * Rewrites the numbers of a text so that `readDecimal`, `parseMoney` and `parseMass` read them one way only. With a sign
 * that was chosen for a whole sheet, the other one groups thousands: "1.250,5" by the comma is "1250.5". Without one, a
 * number that means a thousand by one sign and a trifle by the other ("1.250", "1,250") is refused, and every other is
 * left to the rule of `readDecimal`.
 * Units: as typed. Errors: none for any text; a `problem` says why a number is refused.
 */
export function settleDecimalSign(
  text: string,
  sign?: DecimalSign,
): { readonly text: string } | { readonly problem: DecimalSignProblem } {
  const found: DecimalSignProblem[] = [];
  const settled = text.replaceAll(NUMBER, (number) => {
    const plain = sign === undefined ? unlessAmbiguous(number) : bySign(number, sign);
    if (plain === undefined) found.push(sign === undefined ? 'ambiguous-number' : 'not-a-number');
    return plain ?? number;
  });
  const [problem] = found;
  return problem === undefined ? { text: settled } : { problem };
}

const unlessAmbiguous = (number: string) => (GROUPED_IN_ONE_OF_TWO_WAYS.test(number) ? undefined : number);

function bySign(number: string, sign: DecimalSign): string | undefined {
  const [decimal, group] = sign === 'comma' ? [',', '.'] : ['.', ','];
  const [whole = '', decimals, ...more] = number.split(decimal);
  if (more.length > 0 || (decimals !== undefined && !/^\d+$/.test(decimals))) return undefined;
  const [first = '', ...groups] = whole.split(/[.,\u00a0\u202f]/);
  const isGroupedBy = [...whole].every(
    (character) => /\d|[\u00a0\u202f]/.test(character) || character === group,
  );
  const isPlain = groups.length === 0 ? /^\d*$/.test(first) : /^[1-9]\d{0,2}$/.test(first);
  if (!isGroupedBy || !isPlain || !groups.every((digits) => /^\d{3}$/.test(digits))) return undefined;
  return [first + groups.join(''), ...(decimals === undefined ? [] : [decimals])].join('.');
}
