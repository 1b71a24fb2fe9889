import { describe, expect, test } from 'vitest';
import { REMINDER_KINDS, type ReminderKind, ruleOf } from '../../apps/api/src/features/reminder/kinds.ts';
import {
  digestOf,
  type LetterFrame,
  letterOf,
  type ReminderFact,
} from '../../apps/api/src/features/reminder/letter.ts';
import { wordsOf } from '../../apps/api/src/features/reminder/words/index.ts';
import { inSpanish } from '../../apps/api/src/platform/spoken/spanish.ts';
import { SAID_OF_EQUIPMENT } from '../support/said-of-equipment.ts';

/** What a household is written of each kind, by hand: a kind that has no line here fails. */
const SAID: Readonly<Record<ReminderKind, { readonly en: Said; readonly es: Said }>> = {
  'pledge-closing': {
    en: [
      'Rye closes Sunday, 20 September 2026 at 18:00',
      'Rye gathers pledges until Sunday, 20 September 2026 at 18:00, and your household has made none. Pledge what you want of it, or let it pass.',
    ],
    es: [
      'Rye cierra: domingo, 20 de septiembre de 2026, 18:00',
      'Rye reúne promesas hasta: domingo, 20 de septiembre de 2026, 18:00, y su hogar no ha hecho ninguna. Prometa lo que quiera de ella, o déjela pasar.',
    ],
  },
  'deposit-due': {
    en: [
      'Your deposit on Rye',
      'Your deposit on Rye is asked for by Sunday, 20 September 2026. This is overdue.',
    ],
    es: [
      'Su depósito para Rye',
      'Su depósito para Rye se pide hasta: domingo, 20 de septiembre de 2026. El plazo ya pasó.',
    ],
  },
  'landing-day': {
    en: [
      'Rye lands Sunday, 20 September 2026',
      'Rye lands Sunday, 20 September 2026. Where: Grange hall. Hands are wanted to unload, weigh and carry. A full sack is a load for two: lift with your legs.',
    ],
    es: [
      'Rye llega: domingo, 20 de septiembre de 2026',
      'Rye llega: domingo, 20 de septiembre de 2026. Dónde: Grange hall. Hacen falta manos para descargar, pesar y cargar. Un saco lleno es carga para dos: levante con las piernas.',
    ],
  },
  'food-waiting': {
    en: [
      'Your food of Rye waits',
      'Your food of Rye waits for you. Choose an hour and fetch it by Sunday, 20 September 2026. This is overdue.',
    ],
    es: [
      'Su alimento de Rye espera',
      'Su alimento de Rye le espera. Elija una hora y recójalo hasta: domingo, 20 de septiembre de 2026. El plazo ya pasó.',
    ],
  },
  'pick-up': {
    en: [
      'Fetch your food of Rye',
      'You chose to fetch your food of Rye: Sunday, 20 September 2026 at 18:00. This is overdue.',
    ],
    es: [
      'Recoja su alimento de Rye',
      'Eligió recoger su alimento de Rye: domingo, 20 de septiembre de 2026, 18:00. El plazo ya pasó.',
    ],
  },
  'packing-time': {
    en: [
      'Your time on a line: Rye',
      'Bring your bags to the line, clean and dry: Rye. Your time: Sunday, 20 September 2026 at 18:00.',
    ],
    es: [
      'Su tiempo en la línea: Rye',
      'Traiga sus sacos a la línea, limpios y secos: Rye. Su hora: domingo, 20 de septiembre de 2026, 18:00.',
    ],
  },
  'packing-help': {
    en: [
      'Hands are counted on: Rye',
      'You said that you come to help: Rye, Sunday, 20 September 2026 at 18:00. If you can’t, say so on its page.',
    ],
    es: [
      'Se cuenta con sus manos: Rye',
      'Dijo que viene a ayudar: Rye, domingo, 20 de septiembre de 2026, 18:00. Si no puede, dígalo en su página.',
    ],
  },
  'loan-due': {
    en: [
      'Bring back: Rye',
      'Bring this back clean and with all its parts: Rye. Due: Sunday, 20 September 2026 at 18:00. This is overdue.',
    ],
    es: [
      'Devolver: Rye',
      'Devuelva limpio y con todas sus piezas: Rye. Hasta: domingo, 20 de septiembre de 2026, 18:00. El plazo ya pasó.',
    ],
  },
  'equipment-late': {
    en: [
      'Late: Rye',
      'Whoever has this before you has not brought it back yet: Rye. Your time: Sunday, 20 September 2026 at 18:00. The storehouse shows another one, or the next free times.',
    ],
    es: [
      'Atrasado: Rye',
      'Quien lo tiene antes que usted aún no lo ha devuelto: Rye. Su hora: domingo, 20 de septiembre de 2026, 18:00. El almacén muestra otro igual o las próximas horas libres.',
    ],
  },
  'equipment-offered': {
    en: [
      'Came free for you: Rye',
      'A time that you waited for came free: Rye. Say by Sunday, 20 September 2026 at 18:00 whether you take it; then it goes to the next.',
    ],
    es: [
      'Quedó libre para usted: Rye',
      'Quedó libre una hora que usted esperaba: Rye. Diga si la toma; después pasa al siguiente. Hasta: domingo, 20 de septiembre de 2026, 18:00.',
    ],
  },
  ...SAID_OF_EQUIPMENT,
  'offer-open': {
    en: [
      'Offered to you first: Rye',
      'A member or the store offers this, and it is your turn to say first: Rye. Your turn: until Sunday, 20 September 2026 at 18:00.',
    ],
    es: [
      'Se le ofrece primero: Rye',
      'Un miembro o el almacén ofrece esto, y le toca decir primero: Rye. Su turno, hasta: domingo, 20 de septiembre de 2026, 18:00.',
    ],
  },
  'offer-near': {
    en: [
      'Soon to be offered: Rye',
      'By how it stood, this comes near the time at which others could still make use of it: Rye. Eat it, offer it, or move it to where it is cooler.',
    ],
    es: [
      'Pronto se ofrecerá: Rye',
      'Por cómo se guardó, se acerca el momento en que a otros aún les sirve esto: Rye. Cómalo, ofrézcalo, o llévelo a un lugar más fresco.',
    ],
  },
  'gift-closes-near': {
    en: [
      'Pantries take it only for a short while yet: Rye',
      'After some weeks no pantry takes this any more: Rye. Match it with a pantry, or hand it over for giving, before that.',
    ],
    es: [
      'Las despensas lo aceptan ya por poco tiempo: Rye',
      'En unas semanas ninguna despensa aceptará ya esto: Rye. Asígnelo antes a una despensa, o entréguelo para regalar.',
    ],
  },
  'eat-first-near': {
    en: [
      'Eat first: Rye',
      'By how it stood, this wants to be eaten before all else: Rye. Whether it is still good a look tells, not a date.',
    ],
    es: [
      'Comer primero: Rye',
      'Por cómo se guardó, esto se ha de comer antes que lo demás: Rye. Si sigue bueno lo dice una mirada, no una fecha.',
    ],
  },
  'balance-due': {
    en: ['Your balance', 'You owe the storehouse what your statement shows.'],
    es: ['Su saldo', 'Debe al almacén lo que muestra su estado de cuenta.'],
  },
  'quote-lapses': {
    en: [
      'A quote for Rye lapses',
      'A quote for Rye stands until Sunday, 20 September 2026, before the order. Order sooner, or ask for it anew. This is overdue.',
    ],
    es: [
      'Vence una oferta para Rye',
      'Una oferta para Rye vale hasta: domingo, 20 de septiembre de 2026, antes del pedido. Pida antes, o pídala de nuevo. El plazo ya pasó.',
    ],
  },
  'bill-due': {
    en: [
      'A bill is due: Rye',
      'A bill waits to be paid: Rye. It is due by Sunday, 20 September 2026. This is overdue.',
    ],
    es: [
      'Vence una factura: Rye',
      'Hay una factura por pagar: Rye. Vence: domingo, 20 de septiembre de 2026. El plazo ya pasó.',
    ],
  },
  'claim-window': {
    en: [
      'Claim what came short of Rye',
      'What came short or damaged of Rye is to be claimed by Sunday, 20 September 2026.',
    ],
    es: [
      'Reclame lo que faltó de Rye',
      'Lo que faltó o llegó dañado de Rye se ha de reclamar hasta: domingo, 20 de septiembre de 2026.',
    ],
  },
  'hand-over': {
    en: [
      'Hand over food of Rye',
      'Households come for their food of Rye. The first hour: Sunday, 20 September 2026 at 18:00.',
    ],
    es: [
      'Entregar alimento de Rye',
      'Vienen hogares por su alimento de Rye. La primera hora: domingo, 20 de septiembre de 2026, 18:00.',
    ],
  },
  'move-buy': {
    en: [
      'Rye waits for you',
      'Rye waits for its next step, which is yours to take. It is planned for Sunday, 20 September 2026. This is overdue.',
    ],
    es: [
      'Rye le espera',
      'Rye espera su próximo paso, que le toca a usted. Está planeado para: domingo, 20 de septiembre de 2026. El plazo ya pasó.',
    ],
  },
  notice: {
    en: ['Rye', 'Rye now lands on Saturday, 17 October 2026. By Sunday, 20 September 2026.'],
    es: [
      'Rye',
      'Rye llega ahora el sábado, 17 de octubre de 2026. Hasta: domingo, 20 de septiembre de 2026.',
    ],
  },
  'hold-open': {
    en: [
      'On hold: Rye',
      'Food of Rye is on hold and waits for you: to find out what is the matter, or to agree to its release. Nobody eats any of it until two people have let it go.',
    ],
    es: [
      'Retenido: Rye',
      'Hay alimento de Rye retenido que le espera: para ver qué pasa, o para consentir en soltarlo. Nadie come de ello hasta que dos personas lo suelten.',
    ],
  },
  'seam-check': {
    en: [
      'Check a seal: line 2 of Rye',
      'A check of what line 2 closes has come due: Rye, Sunday, 20 September 2026 at 18:00. Make it before the line closes more: a can is torn down and measured, a pouch tugged and squeezed under water. A cut edge is sharp: wear gloves. This is overdue.',
    ],
    es: [
      'Revise un cierre: línea 2 de Rye',
      'Toca revisar lo que cierra la línea 2: Rye, domingo, 20 de septiembre de 2026, 18:00. Hágalo antes de que la línea cierre más: una lata se desmonta y se mide, una bolsa se estira y se aprieta bajo el agua. Un borde cortado corta: use guantes. El plazo ya pasó.',
    ],
  },
  'suspects-open': {
    en: [
      'Containers in doubt: Rye',
      'Containers of Rye are on hold since a check of their seals failed, and nobody has said what becomes of them. Nobody eats from them until somebody does.',
    ],
    es: [
      'Envases en duda: Rye',
      'Hay envases de Rye retenidos desde que falló una revisión de sus cierres, y nadie ha dicho qué se hace con ellos. Nadie come de ellos hasta que alguien lo diga.',
    ],
  },
  'lid-check': {
    en: [
      'Press the lids of your jars: Rye',
      'Jars were closed a day ago: Rye, 14. Press the middle of each lid: it stays down where the closing holds. That says nothing of whether food is safe: dry food only, and home preserving by published guidance. Write down which did not hold. This is overdue.',
    ],
    es: [
      'Presione las tapas de los frascos: Rye',
      'Hay frascos que se cerraron hace un día: Rye, 14. Presione el centro de cada tapa: queda hundido si el cierre aguanta. Eso no dice si el alimento es seguro: solo alimento seco, y las conservas caseras según guías publicadas. Anote cuáles no aguantaron. El plazo ya pasó.',
    ],
  },
  'duty-ends': {
    en: [
      'A duty of Rye ends',
      'A duty of Rye is meant to end: Sunday, 20 September 2026. Find who takes it over; the storehouse has a page and a paper for handing it on. Nothing ends by itself. This is overdue.',
    ],
    es: [
      'Termina un cargo de Rye',
      'Un cargo de Rye debe terminar: domingo, 20 de septiembre de 2026. Busque quién lo toma; el almacén tiene una página y una hoja para traspasarlo. Nada termina por sí solo. El plazo ya pasó.',
    ],
  },
  unreached: {
    en: [
      'Telephone about Rye',
      'Households that were told about Rye a day ago have not acknowledged it, and it is about safety. Telephone them; which ones, the storehouse shows you. This is overdue.',
    ],
    es: [
      'Llame por teléfono: Rye',
      'Hogares avisados hace un día sobre Rye no lo han confirmado, y trata de seguridad. Llámelos; el almacén le muestra cuáles son. El plazo ya pasó.',
    ],
  },
  safety: {
    en: [
      'Safety: Rye',
      'Rye now lands on Saturday, 17 October 2026. Acknowledge it in the storehouse, so that nobody has to telephone you. By Sunday, 20 September 2026.',
    ],
    es: [
      'Seguridad: Rye',
      'Rye llega ahora el sábado, 17 de octubre de 2026. Confírmelo en el almacén, para que nadie tenga que llamarle por teléfono. Hasta: domingo, 20 de septiembre de 2026.',
    ],
  },
};
type Said = readonly [subject: string, sentence: string];

/** What is due at an hour; all else is due on a day, or on none. */
const AT_AN_HOUR: readonly string[] = [
  ...['pledge-closing', 'pick-up', 'hand-over'],
  ...['packing-time', 'packing-help', 'loan-due', 'equipment-late', 'equipment-offered', 'seam-check'],
  'lid-check',
  ...['offer-open', 'equipment-asked', 'relay-asked', 'late-return'],
];
const SAYS: Readonly<Record<string, string>> = {
  'landing-day': 'Grange hall',
  'seam-check': '2',
  'lid-check': '14',
};
const NOTICE = 'Rye now lands on 2026-10-17.';
const HOME = 'https://book.example/s/018f0000-0000-7000-8000-000000000001';
const STOP = 'https://book.example/stop/abc';

function factOf(kind: ReminderKind, language: string): ReminderFact {
  return {
    ...{ kind, thing: '/buys/018f0000-0000-7000-8000-000000000002', about: 'Rye', page: '/buys/one' },
    dueOn: ruleOf(kind).open === 'monthly' ? null : '2026-09-20',
    dueAt: AT_AN_HOUR.includes(kind) ? new Date('2026-09-20T23:00:00Z') : null,
    says: SAYS[kind] ?? (language === 'es' ? inSpanish(NOTICE) : NOTICE),
  };
}
const frameIn = (language: string): LetterFrame => ({
  ...{ language, storehouseName: 'Alder Row', storehouseZone: 'America/Chicago' },
  ...{ readerZone: 'America/Chicago', home: HOME, stopUrlOf: () => STOP },
});
const tellingOf = (kind: ReminderKind, language: string) => ({
  fact: factOf(kind, language),
  stage: ruleOf(kind).overdue ? 'overdue' : 'day',
  key: `${kind}|x`,
});
/** A body as somebody reads it: what stands in the HTML without its tags, and no addresses. */
const readable = (body: string) =>
  body
    .replaceAll(/<a href="[^"]*">/g, '')
    .replaceAll(/<[^>]+>/g, ' ')
    .replaceAll(/https:\S+/g, '');

describe.for(['en', 'es'] as const)('in %s', (language) => {
  test.for(REMINDER_KINDS)('a letter of the kind %s says what it is about and what to do', (kind) => {
    const [subject, sentence] = SAID[kind][language];
    const letter = letterOf(tellingOf(kind, language), frameIn(language));
    expect(letter.subject).toBe(`Alder Row: ${subject}`);
    expect(letter.text.split('\n')[0]).toBe(sentence);
    expect(readable(letter.html)).toContain(sentence);
    expect(letter.text).toContain(`${HOME}/buys/one`);
    expect(letter.stopUrl).toBe(ruleOf(kind).isSafety ? null : STOP);
    expect(letter.text.includes(STOP)).toBe(!ruleOf(kind).isSafety);
  });

  test.for(REMINDER_KINDS)('it shows no code, no ISO day and no amount of money: %s', (kind) => {
    const { subject, text, html } = letterOf(tellingOf(kind, language), frameIn(language));
    const shown = [subject, text, html].map(readable).join('\n');
    for (const code of REMINDER_KINDS.filter((one) => one.includes('-'))) expect(shown).not.toContain(code);
    expect(shown).not.toMatch(/[0-9a-f]{8}-[0-9a-f]{4}|undefined|null|\{|\}/);
    expect(shown).not.toMatch(/\d{4}-\d{2}-\d{2}/);
    expect(shown).not.toMatch(/\d[.,]\d{2}\b|[$€£]/);
  });

  test('one letter a day says of every kind what its own letter says', () => {
    const tellings = REMINDER_KINDS.map((kind) => tellingOf(kind, language));
    const digest = digestOf(tellings, frameIn(language));
    for (const kind of REMINDER_KINDS) {
      expect(digest.text).toContain(SAID[kind][language][1]);
      expect(readable(digest.html)).toContain(SAID[kind][language][1]);
    }
    expect(digest.subject).toContain(String(REMINDER_KINDS.length));
  });
});

test('of common stock a letter says so to whoever keeps it', () => {
  for (const [language, words] of [
    ['en', 'Of common stock'],
    ['es', 'De las existencias comunes'],
  ] as const)
    for (const kind of ['offer-near', 'gift-closes-near', 'eat-first-near'] as const) {
      const { fact, ...telling } = tellingOf(kind, language);
      const letter = letterOf({ ...telling, fact: { ...fact, says: 'common' } }, frameIn(language));
      expect(letter.text).toContain(words);
    }
});

test('the two languages share no sentence', () => {
  for (const kind of REMINDER_KINDS) expect(SAID[kind].en[1]).not.toBe(SAID[kind].es[1]);
});

test('every kind that can be stopped has a name on the page that stops it', () => {
  for (const language of ['en', 'es'])
    for (const kind of REMINDER_KINDS.filter((one) => !ruleOf(one).isSafety))
      expect(wordsOf(language).names[kind]).toMatch(/^\p{Ll}[\p{L} ]+$/u);
});
