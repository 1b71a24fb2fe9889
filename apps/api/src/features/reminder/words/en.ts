import { endSentence } from '../../../platform/end-sentence.ts';
import type { ReminderKind } from '../kinds.ts';

/** What a letter says of a thing: in its subject, and what to do. No amount of money: a letter may be read by others. */
export type KindWords = { readonly subject: string; readonly says: string };
export type Told = { readonly about: string; readonly due: string; readonly says: string };

export const en = {
  kinds: {
    'pledge-closing': ({ about, due }) => ({
      subject: `${about} closes ${due}`,
      says: `${about} gathers pledges until ${due}, and your household has made none. Pledge what you want of it, or let it pass.`,
    }),
    'deposit-due': ({ about, due }) => ({
      subject: `Your deposit on ${about}`,
      says: `Your deposit on ${about} is asked for by ${due}.`,
    }),
    'landing-day': ({ about, due, says: place }) => ({
      subject: `${about} lands ${due}`,
      says: `${about} lands ${due}.${place === '' ? '' : ` Where: ${endSentence(place)}`} Hands are wanted to unload, weigh and carry. A full sack is a load for two: lift with your legs.`,
    }),
    'food-waiting': ({ about, due }) => ({
      subject: `Your food of ${about} waits`,
      says: `Your food of ${about} waits for you. Choose an hour and fetch it by ${due}.`,
    }),
    'pick-up': ({ about, due }) => ({
      subject: `Fetch your food of ${about}`,
      says: `You chose to fetch your food of ${about}: ${due}.`,
    }),
    'packing-time': ({ about, due }) => ({
      subject: `Your time on a line: ${about}`,
      says: `Bring your bags to the line, clean and dry: ${about}. Your time: ${due}.`,
    }),
    'packing-help': ({ about, due }) => ({
      subject: `Hands are counted on: ${about}`,
      says: `You said that you come to help: ${about}, ${due}. If you can’t, say so on its page.`,
    }),
    'loan-due': ({ about, due }) => ({
      subject: `Bring back: ${about}`,
      says: `Bring this back clean and with all its parts: ${about}. Due: ${due}.`,
    }),
    'equipment-late': ({ about, due }) => ({
      subject: `Late: ${about}`,
      says: `Whoever has this before you has not brought it back yet: ${about}. Your time: ${due}. The storehouse shows another one, or the next free times.`,
    }),
    'equipment-offered': ({ about, due }) => ({
      subject: `Came free for you: ${about}`,
      says: `A time that you waited for came free: ${about}. Say by ${due} whether you take it; then it goes to the next.`,
    }),
    'equipment-asked': ({ about, due }) => ({
      subject: `Handed straight on? ${about}`,
      says: `A neighbour asks to take this straight from you, so that nobody brings it back between: ${about}. Their time: ${due}. Say yes or no; before you hand it on, it is cleaned and its parts are counted.`,
    }),
    'relay-asked': ({ about, due }) => ({
      subject: `To be handed straight on: ${about}`,
      says: `Two borrowers mean to hand this straight on, and no answer is in yet: ${about}. You can say no until ${due}.`,
    }),
    'late-return': ({ about, due }) => ({
      subject: `Not back yet: ${about}`,
      says: `This is not back: ${about}. It was due ${due}. Ask when it comes, and tell who is next.`,
    }),
    'service-due': ({ about, due }) => ({
      subject: `Service: ${about}`,
      says: `This wants its service${due === '' ? ' by its uses' : `; the day by its calendar is ${due}`}: ${about}. Pull the plug and keep hands clear of jaws and rollers while it is open; the maker’s manual goes first. Write down what was done.`,
    }),
    'unfit-equipment': ({ about }) => ({
      subject: `Not fit to lend: ${about}`,
      says: `This is dirty, broken or lacks a part that it needs: ${about}. See to it before it goes out again.`,
    }),
    'offer-open': ({ about, due }) => ({
      subject: `Offered to you first: ${about}`,
      says: `A member or the store offers this, and it is your turn to say first: ${about}. Your turn: until ${due}.`,
    }),
    'offer-near': ({ about, says: whose }) => ({
      subject: `Soon to be offered: ${about}`,
      says:
        whose === 'common'
          ? `Of common stock this comes near the time at which members are asked whether they want it: ${about}.`
          : `By how it stood, this comes near the time at which others could still make use of it: ${about}. Eat it, offer it, or move it to where it is cooler.`,
    }),
    'gift-closes-near': ({ about, says: whose }) => ({
      subject: `Pantries take it only for a short while yet: ${about}`,
      says: `${whose === 'common' ? 'Of common stock, after' : 'After'} some weeks no pantry takes this any more: ${about}. Match it with a pantry, or hand it over for giving, before that.`,
    }),
    'eat-first-near': ({ about, says: whose }) => ({
      subject: `Eat first: ${about}`,
      says:
        whose === 'common'
          ? `Of common stock this wants to be eaten before all else: ${about}. Whether it is still good a look tells, not a date.`
          : `By how it stood, this wants to be eaten before all else: ${about}. Whether it is still good a look tells, not a date.`,
    }),
    'balance-due': () => ({
      subject: 'Your balance',
      says: 'You owe the storehouse what your statement shows.',
    }),
    'quote-lapses': ({ about, due }) => ({
      subject: `A quote for ${about} lapses`,
      says: `A quote for ${about} stands until ${due}, before the order. Order sooner, or ask for it anew.`,
    }),
    'bill-due': ({ about, due }) => ({
      subject: `A bill is due: ${about}`,
      says: `A bill waits to be paid: ${about}. It is due by ${due}.`,
    }),
    'claim-window': ({ about, due }) => ({
      subject: `Claim what came short of ${about}`,
      says: `What came short or damaged of ${about} is to be claimed by ${due}.`,
    }),
    'hand-over': ({ about, due }) => ({
      subject: `Hand over food of ${about}`,
      says: `Households come for their food of ${about}. The first hour: ${due}.`,
    }),
    'move-buy': ({ about, due }) => ({
      subject: `${about} waits for you`,
      says: `${about} waits for its next step, which is yours to take. It is planned for ${due}.`,
    }),
    notice: ({ about, says }) => ({ subject: about, says }),
    'hold-open': ({ about }) => ({
      subject: `On hold: ${about}`,
      says: `Food of ${about} is on hold and waits for you: to find out what is the matter, or to agree to its release. Nobody eats any of it until two people have let it go.`,
    }),
    'seam-check': ({ about, due, says: line }) => ({
      subject: `Check a seal: line ${line} of ${about}`,
      says: `A check of what line ${line} closes has come due: ${about}, ${due}. Make it before the line closes more: a can is torn down and measured, a pouch tugged and squeezed under water. A cut edge is sharp: wear gloves.`,
    }),
    'suspects-open': ({ about }) => ({
      subject: `Containers in doubt: ${about}`,
      says: `Containers of ${about} are on hold since a check of their seals failed, and nobody has said what becomes of them. Nobody eats from them until somebody does.`,
    }),
    'lid-check': ({ about, says: count }) => ({
      subject: `Press the lids of your jars: ${about}`,
      says: `Jars were closed a day ago: ${about}, ${count}. Press the middle of each lid: it stays down where the closing holds. That says nothing of whether food is safe: dry food only, and home preserving by published guidance. Write down which did not hold.`,
    }),
    'duty-ends': ({ about, due }) => ({
      subject: `A duty of ${about} ends`,
      says: `A duty of ${about} is meant to end: ${due}. Find who takes it over; the storehouse has a page and a paper for handing it on. Nothing ends by itself.`,
    }),
    unreached: ({ about }) => ({
      subject: `Telephone about ${about}`,
      says: `Households that were told about ${about} a day ago have not acknowledged it, and it is about safety. Telephone them; which ones, the storehouse shows you.`,
    }),
    safety: ({ about, says }) => ({
      subject: `Safety: ${about}`,
      says: `${says} Acknowledge it in the storehouse, so that nobody has to telephone you.`,
    }),
  } satisfies Record<ReminderKind, (told: Told) => KindWords> as Record<
    ReminderKind,
    (told: Told) => KindWords
  >,
  overdue: 'This is overdue.',
  by: (due: string) => `By ${due}.`,
  digest: (count: number, storehouse: string) =>
    `${storehouse}: ${count === 1 ? 'one thing' : `${count} things`} for you`,
  single: (subject: string, storehouse: string) => `${storehouse}: ${subject}`,
  go: 'Open it',
  stop: 'Stop letters about this',
  stopAll: 'Stop all letters but those about safety',
  cannotStop: 'What is about safety can’t be stopped, only acknowledged.',
  stopTitle: 'Stop these letters?',
  stopWords: (what: string) => `You would no longer be written to about: ${what}.`,
  stopButton: 'Stop them',
  stoppedTitle: 'You are no longer written to about this.',
  stoppedWords: 'Inside the storehouse, under Notices, you can switch it on again.',
  lostTitle: 'There is nothing at this address.',
  lostWords: 'The link may be old, or a letter was lost on the way.',
  names: {
    all: 'everything but safety',
    'pledge-closing': 'a buy that closes',
    'deposit-due': 'deposits',
    'landing-day': 'landing days',
    'food-waiting': 'food that waits',
    'packing-time': 'your time on a line',
    'packing-help': 'packing days you help at',
    'loan-due': 'equipment to bring back',
    'equipment-late': 'equipment that is late for you',
    'equipment-offered': 'equipment that came free',
    'equipment-asked': 'equipment that somebody asks to take from you',
    'relay-asked': 'equipment to be handed straight on',
    'late-return': 'equipment that is not back',
    'service-due': 'service of equipment',
    'unfit-equipment': 'equipment not fit to lend',
    'offer-open': 'what is offered to you first',
    'pick-up': 'hours to fetch food',
    'offer-near': 'what is soon to be offered',
    'gift-closes-near': 'what pantries soon no longer take',
    'eat-first-near': 'what to eat first',
    'balance-due': 'your balance',
    'quote-lapses': 'quotes that lapse',
    'bill-due': 'bills',
    'claim-window': 'claims',
    'hand-over': 'handing food over',
    'lid-check': 'lids of jars to press',
    'duty-ends': 'ends of duties',
    'move-buy': 'steps of a buy',
    notice: 'notices',
  } as Readonly<Record<string, string>>,
};

export type ReminderWords = typeof en;
