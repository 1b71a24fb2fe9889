import { spellCode } from '@sheafbook/units';
import { presentManifest } from '../../gift/present.ts';
import { readManifestWithContacts } from '../../gift/use-cases.ts';
import { type Block, facts, heading, type Row, table, text } from '../content.ts';
import type { Formats } from '../formats.ts';
import {
  callable,
  type Desk,
  foodOf,
  type MadePaper,
  saysAllergens,
  saysMet,
  subject,
  treatmentName,
} from './making.ts';

type Manifest = ReturnType<typeof presentManifest>;
type Line = Manifest['lines'][number];

/**
 * The manifest of a gift with its receipt (paper 11): a row for what is alike, in it each container by its code with all that
 * follows it, room for the pantry’s answer, and what the law shields and what it does not. No household stands on it, and no price.
 */
export async function makeGiftManifest({ context, formats }: Desk, manifestId: string): Promise<MadePaper> {
  const { manifest: read, coordinators } = await readManifestWithContacts(context, manifestId);
  const manifest = presentManifest(read);
  const { gift: words } = formats.words;
  const content = {
    about: [words.number(manifest.number), manifest.pantry, formats.day(manifest.onDay)],
    blocks: [
      ...(manifest.calledOffBecause === null ? [] : [text(words.calledOff(manifest.calledOffBecause))]),
      facts([
        { name: words.pantry, value: manifest.pantry },
        { name: words.door, value: manifest.address },
        { name: words.day, value: formats.day(manifest.onDay) },
        { name: words.card, value: words.cardVersion(manifest.cardVersion) },
        { name: words.driver, value: manifest.driver },
        {
          name: words.signedOut,
          value: `${manifest.signedOutBy}, ${formats.instantWithZone(new Date(manifest.signedOutAt))}`,
        },
        { name: words.recall, value: callable(coordinators, formats) || words.recallNobody },
      ]),
      linesTable(manifest, formats),
      text(words.kept),
      text(words.bands),
      ...cautions(manifest, formats),
      heading(words.receipt),
      receiptFacts(manifest, formats),
      heading(words.lawTitle),
      ...words.law.map(text),
      { kind: 'signatures', boxes: [words.signOut, words.signDriver, words.signIn] } as const,
    ],
  };
  return {
    subject: subject('gift-manifest', { subjectId: manifestId }),
    contentWith: () => content,
    isLandscape: true,
  };
}

function linesTable(manifest: Manifest, formats: Formats): Block {
  const { gift: words, total } = formats.words;
  return table(
    [
      { name: words.container, isKey: true },
      { name: words.what },
      { name: words.mass, isNumber: true },
      { name: words.packed },
      { name: words.dates },
      { name: words.keptHow },
      { name: words.accepted, penWidth: 60 },
      { name: words.refused, penWidth: 110 },
    ],
    [
      ...alike(manifest.lines).map((lines) => rowOf(lines, manifest, formats)),
      {
        kind: 'sum',
        cells: [
          total,
          words.containers(manifest.lines.length),
          formats.bothLines(manifest.grams),
          ...['', '', '', '', ''],
        ],
      },
    ],
  );
}

/** So many containers at most in one row, which no page breaks. */
const MOST_IN_A_ROW = 12;

type Alike = readonly [Line, ...Line[]];

/** Neighbours on the list that differ in nothing but their codes and the pantry's answer. */
function alike(lines: readonly Line[]): Alike[] {
  const groups: [Line, ...Line[]][] = [];
  const looksOf = ({ containerId: _, code: _code, isAccepted: _is, refusedBecause: _why, ...looks }: Line) =>
    JSON.stringify(looks);
  for (const line of lines) {
    const last = groups.at(-1);
    if (last && last.length < MOST_IN_A_ROW && looksOf(last[0]) === looksOf(line)) last.push(line);
    else groups.push([line]);
  }
  return groups;
}

function rowOf(lines: Alike, { stage }: Manifest, formats: Formats): Row {
  const { gift: words } = formats.words;
  const [line] = lines;
  const { supplierMark, grams, packedOn, sealedBy, eatFirstOn, giftClosesOn, warmth } = line;
  const kind = formats.language === 'es' ? line.kindEs : line.kindEn;
  const isBack = stage === 'received';
  const takenOf = ({ isAccepted }: Line) => (isAccepted ? formats.first(grams) : words.nothing);
  const whyOf = ({ code, refusedBecause }: Line) =>
    lines.length === 1 ? refusedBecause : `${spellCode(code)}: ${refusedBecause}`;
  return {
    ...(isBack ? {} : { kind: 'pen' as const }),
    cells: [
      [...lines.map(({ code }) => spellCode(code)), supplierMark && words.lot(supplierMark)]
        .filter(Boolean)
        .join('\n'),
      [
        foodOf(line, formats),
        saysAllergens(line, formats),
        saysMet(line, formats),
        `${kind}, ${treatmentName(line, formats)}`,
      ]
        .filter(Boolean)
        .join('\n'),
      lines.length === 1
        ? formats.bothLines(grams)
        : `${words.each(lines.length, formats.both(grams))}\n${formats.bothLines(lines.length * grams)}`,
      `${formats.day(packedOn)}\n${words.sealers[sealedBy] ?? sealedBy}`,
      `${words.eatFirst(formats.day(eatFirstOn))}\n${words.closes(formats.day(giftClosesOn))}`,
      words.warmths[warmth] ?? warmth,
      lines.map((one) => (isBack ? takenOf(one) : words.tick)).join('\n'),
      isBack
        ? lines
            .filter(({ isAccepted }) => !isAccepted)
            .map(whyOf)
            .join('\n')
        : '',
    ],
  };
}

function cautions({ lines }: Manifest, { words: { gift } }: Formats): Block[] {
  if (!lines.some(({ sealedBy }) => sealedBy === 'home')) return [];
  return [heading(gift.homeTitle), text(gift.homeCaution)];
}

/** Empty until the receipt is back, for the pen at the pantry’s door. */
function receiptFacts(manifest: Manifest, formats: Formats): Block {
  const { gift: words } = formats.words;
  const isBack = manifest.stage === 'received';
  const said = (value: string) => (isBack ? value : '');
  return facts([
    {
      name: words.receivedOn,
      value: manifest.receivedOn === null ? '' : formats.day(manifest.receivedOn),
    },
    { name: words.receiver, value: manifest.receiverDuty ?? '' },
    { name: words.acceptedGrams, value: said(formats.both(manifest.acceptedGrams)) },
    { name: words.refusedGrams, value: said(formats.both(manifest.refusedGrams)) },
    { name: words.note, value: said(manifest.receiptNote || words.nothing) },
  ]);
}
