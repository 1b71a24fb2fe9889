import { presentItem } from '../../equipment/present.ts';
import { readItem } from '../../equipment/use-cases.ts';
import { presentLoan } from '../../loan/present.ts';
import { readLoan } from '../../loan/use-cases.ts';
import { readEquipmentPhotos } from '../../photo/use-cases.ts';
import { type Block, facts, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import { type Desk, type MadePaper, subject } from './making.ts';

type Loan = ReturnType<typeof presentLoan>;

/** The loan slip (paper 9): what went out to whom and until when, its parts with a tick each way, and what it costs. */
export async function makeLoanSlip({ context, formats }: Desk, loanId: string): Promise<MadePaper> {
  const loan = presentLoan(await readLoan(context, loanId));
  const item = presentItem(await readItem(context, loan.itemId));
  const photos = await readEquipmentPhotos(context, loan.itemId, { loanId });
  const taken = (moment: string) => photos.filter((photo) => photo.moment === moment).length;
  const { loan: words } = formats.words;
  const { household } = loan;
  const content = {
    about: [
      words.piece(loan.itemName, loan.unitNo, loan.unitCode),
      formats.words.seatName(household.name, household.seat),
    ],
    blocks: [
      facts([
        { name: words.out, value: formats.instantWithZone(new Date(loan.outAt)) },
        { name: words.due, value: formats.instantWithZone(new Date(loan.dueAt)) },
        { name: words.in, value: loan.inAt === null ? '' : formats.instantWithZone(new Date(loan.inAt)) },
        loan.relayedFromId !== null && { name: words.cameBy, value: words.relay },
        { name: words.relayTo, value: '' },
      ]),
      ...(item.cautions ? [heading(words.cautions), text(item.cautions)] : []),
      heading(words.parts),
      partsTable(loan, formats),
      heading(words.condition),
      facts([
        { name: words.conditionOut, value: loan.noteOut || words.nothing },
        { name: words.conditionIn, value: conditionIn(loan, formats) },
        {
          name: words.photos,
          value: photos.length === 0 ? '' : words.photosKept(taken('out'), taken('back')),
        },
      ]),
      heading(words.money(formats.currency)), // said here, the slip of a thing with few parts is one page
      moneyFacts(loan, formats),
      { kind: 'signatures', boxes: [words.signOut(loan.takenBy), words.signIn(loan.broughtBy)] } as const,
    ],
  };
  return {
    subject: subject('loan-slip', { subjectId: loanId, householdId: household.id }),
    contentWith: () => content,
  };
}

function partsTable({ parts, inAt }: Loan, formats: Formats) {
  const { loan: words } = formats.words;
  const rows = parts.map(
    ({ name, isCritical, valueMinorUnits, outPieces, inPieces }): Row => ({
      kind: 'pen',
      cells: [
        isCritical ? `${name}\n${words.critical}` : name,
        valueMinorUnits === null ? words.noValue : formats.money(valueMinorUnits),
        words.ticked(outPieces),
        inAt === null ? '' : words.ticked(inPieces ?? 0),
      ],
    }),
  );
  return table(
    [
      { name: words.part },
      { name: words.value, isNumber: true },
      { name: words.ticksOut, penWidth: 50 },
      { name: words.ticksIn, penWidth: 70 },
    ],
    rows,
  );
}

function conditionIn({ inAt, conditionIn: stands, noteIn }: Loan, { words }: Formats): string {
  if (inAt === null) return '';
  return [stands === null ? '' : (words.loan.conditions[stands] ?? stands), noteIn]
    .filter(Boolean)
    .join('. ');
}

function moneyFacts(loan: Loan, formats: Formats): Block {
  const { loan: words } = formats.words;
  const deposit = words.deposit(words.froms[loan.depositFrom] ?? loan.depositFrom);
  const later: [string, number | null][] = [
    [words.fee, loan.feeMinorUnits],
    [loan.isLateWaived ? words.lateWaived : words.late, loan.lateMinorUnits],
    [words.missing, loan.partsMinorUnits],
    [words.damage, loan.damageMinorUnits],
    [words.kept, loan.keptMinorUnits],
    [words.refund, loan.refundMinorUnits],
  ];
  return facts([
    { name: deposit, value: formats.money(loan.depositMinorUnits) },
    ...later.map(([name, minorUnits]) => ({
      name,
      value: loan.inAt === null ? '' : formats.money(minorUnits ?? 0),
    })),
  ]);
}
