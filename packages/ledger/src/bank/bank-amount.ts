/** The mark that a bank writes before the cents. Units: none. Errors: none. */
export type DecimalMark = '.' | ',';

const LONGEST_AMOUNT = 40;

/**
 * Reads an amount as a bank writes it: "-1,234.50", "1.234,50", "(12.00)", "12.00-", "12,5", "$ 12", "12.00 DR". The
 * bank's own decimal mark is told, so that nothing is ambiguous; nothing is rounded.
 * Units: minor units of a currency with `exponent` decimals, signed; undefined for what is no such amount. Errors: none.
 */
export function readBankAmount(
  text: string,
  { decimalMark, exponent }: { decimalMark: DecimalMark; exponent: number },
): number | undefined {
  if (text.length > LONGEST_AMOUNT) return undefined;
  const bare = text
    .replace(/[\s\u00a0\u202f'’]/g, '')
    .replace(/^(US|CA|MX|AU|NZ)?[$€£¥]|[$€£¥]$/g, '')
    .replace(/^[A-Z]{3}(?=[\d(+−–-])|(?<=\d)(?!CR|DR)[A-Z]{3}$/g, '');
  const [, before = '', figures = '', after = ''] =
    /^([-−–+(]?[$€£¥]?)([\d.,]+)(\)|-|−|CR|DR)?$/i.exec(bare) ?? [];
  const digits = readDigits(figures, decimalMark);
  if (!digits) return undefined;
  const cents = digits.cents.replace(/0+$/, '');
  if (cents.length > exponent) return undefined;
  const minorUnits = Number(`${digits.whole}${cents.padEnd(exponent, '0')}`);
  if (!Number.isSafeInteger(minorUnits)) return undefined;
  const isNegative = /^[-−–(]/.test(before) || /^([)−-]|DR)$/i.test(after);
  return isNegative && minorUnits !== 0 ? -minorUnits : minorUnits;
}

/**
 * Guesses a bank's decimal mark from a column of amounts: the last mark before one or two digits, by majority.
 * Units: none. Errors: none. Source: common practice, no source.
 */
export function guessDecimalMark(texts: readonly string[]): DecimalMark {
  const marks = texts.flatMap((text) => /([.,])\d{1,2}\D*$/.exec(text)?.[1] ?? []);
  const commas = marks.filter((mark) => mark === ',').length;
  return commas * 2 > marks.length ? ',' : '.';
}

function readDigits(figures: string, mark: DecimalMark): { whole: string; cents: string } | undefined {
  const isPoint = mark === '.';
  const shape = isPoint ? /^(\d{1,3}(?:,\d{3})+|\d+)(?:\.(\d*))?$/ : /^(\d{1,3}(?:\.\d{3})+|\d+)(?:,(\d*))?$/;
  const parts = shape.exec(figures);
  if (!parts) return undefined;
  return { whole: (parts[1] ?? '').replaceAll(isPoint ? ',' : '.', ''), cents: parts[2] ?? '' };
}
