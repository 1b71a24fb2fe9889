import { FINDING_WORDS } from '@sheafbook/keeping';
import { ES_AUDIT } from './es-audit.ts';
import { ES_BANK } from './es-bank.ts';
import { ES_BUY } from './es-buy.ts';
import { ES_GIVING } from './es-giving.ts';
import { ES_HOLD } from './es-hold.ts';
import { ES_IMPORT } from './es-import.ts';
import { ES_KEEPING } from './es-keeping.ts';
import { ES_LANDING } from './es-landing.ts';
import { ES_LENDING } from './es-lending.ts';
import { ES_LOOKS } from './es-looks.ts';
import { ES_MONEY } from './es-money.ts';
import { ES_NOTICE } from './es-notice.ts';
import { ES_OFFER } from './es-offer.ts';
import { ES_PACKING } from './es-packing.ts';
import { ES_PAPER } from './es-paper.ts';
import { ES_PEOPLE } from './es-people.ts';
import { ES_REQUEST } from './es-request.ts';
import { ES_SUPPLY } from './es-supply.ts';
import { ES_WORK } from './es-work.ts';

/** Every sentence that a refusal or a next step is said with, by its English; `{}` stands for what differs each time. */
export const SPANISH: Readonly<Record<string, string>> = {
  ...ES_REQUEST,
  ...ES_PEOPLE,
  ...ES_BUY,
  ...ES_HOLD,
  ...ES_LANDING,
  ...ES_LENDING,
  ...ES_KEEPING,
  ...ES_LOOKS,
  ...ES_MONEY,
  ...ES_BANK,
  ...ES_NOTICE,
  ...ES_OFFER,
  ...ES_PACKING,
  ...ES_SUPPLY,
  ...ES_PAPER,
  ...ES_GIVING,
  ...ES_IMPORT,
  ...ES_WORK,
  ...ES_AUDIT,
};

/** Single words that stand where a sentence differs: stages, duties and findings. Names, figures and days stay as they are. */
const WORDS: Readonly<Record<string, string>> = {
  planning: 'planeada',
  gathering: 'reuniendo promesas',
  fixed: 'fijada',
  ordered: 'pedida',
  landed: 'llegada',
  'shared out': 'repartida',
  'shared-out': 'repartida',
  closed: 'cerrada',
  'called off': 'anulada',
  'called-off': 'anulada',
  coordinator: 'coordinador',
  treasurer: 'tesorero',
  'packing lead': 'jefe de envasado',
  'equipment keeper': 'encargado de equipos',
  reviewer: 'revisor',
  ...Object.fromEntries(Object.values(FINDING_WORDS).map(({ name }) => [name.en, name.es])),
};

type Pattern = { readonly test: RegExp; readonly parts: readonly string[]; readonly length: number };

/** The more of a sentence is written out, the sooner it is tried: "At most {} g." before "At most {}." */
const PATTERNS: readonly Pattern[] = Object.entries(SPANISH)
  .filter(([english]) => english.includes('{}'))
  .map(([english, spanish]) => ({
    test: new RegExp(`^${english.split('{}').map(literally).join('(.*?)')}$`, 'su'),
    parts: spanish.split('{}'),
    length: english.length,
  }))
  .sort((a, b) => b.length - a.length);

function literally(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
}

/** What the server says in Spanish, sentence by sentence. One that it does not know, such as a name, stays as it is. */
export function inSpanish(text: string): string {
  return (
    sentenceInSpanish(text) ??
    text
      .split(BETWEEN_SENTENCES)
      .map((sentence) => sentenceInSpanish(sentence) ?? sentence)
      .join(' ')
  );
}

const BETWEEN_SENTENCES = /(?<=[.?!]) (?=\p{Lu})/u;

/** "Winter grain: Fix the buy.": the name stays as it is, colons and all, and the sentence behind it is said as any other. */
function afterItsName(sentence: string): string | undefined {
  const at = sentence.indexOf(': ');
  if (at < 1) return undefined;
  const said = sentenceInSpanish(sentence.slice(at + 2));
  return said === undefined ? undefined : sentence.slice(0, at + 2) + said;
}

function sentenceInSpanish(sentence: string): string | undefined {
  const whole = SPANISH[sentence];
  if (whole !== undefined) return whole;
  for (const { test, parts } of PATTERNS) {
    const found = test.exec(sentence);
    if (found) return fill(parts, found.slice(1));
  }
  return afterItsName(sentence);
}

const fill = (parts: readonly string[], values: readonly string[]): string =>
  parts.map((part, at) => part + (at < values.length ? wordsInSpanish(values[at] ?? '') : '')).join('');

/** "fixed or ordered" word for word; anything else is a name or a figure. */
function wordsInSpanish(value: string): string {
  const whole = WORDS[value];
  if (whole !== undefined) return whole;
  const steps = value.split(/(, | or | and )/);
  const isKnown = steps.every((step, at) => at % 2 === 1 || WORDS[step] !== undefined);
  if (!isKnown) return value;
  return steps.map((step) => WORDS[step] ?? step.replace('or', 'o').replace('and', 'y')).join('');
}
