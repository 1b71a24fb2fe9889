import { sumOf } from '@sheafbook/units';
import PDFDocument from 'pdfkit';
import type { Document } from './document.ts';
import { registerFaces } from './fonts.ts';
import { LABEL_SHEETS, type LabelSheet, type LabelSheetName, labelsOnSheet } from './label-sheets.ts';
import { drawQr } from './qr.ts';
import type { Style } from './style.ts';
import { drawLine, lineHeight, widthOf, wrap } from './text.ts';

/** One label as it is drawn: its code, what is written large, and lines beneath in order of weight. */
export type DrawnLabel = {
  readonly code: string;
  readonly spelled: string;
  readonly title: string;
  readonly lines: readonly string[];
};

type LabelJob = {
  readonly sheet: LabelSheetName;
  /** The first free sticker of the first sheet, from 1. */
  readonly start: number;
  readonly title: string;
  readonly language: 'en' | 'es';
  readonly printedAt: Date;
};

const POINTS_A_MILLIMETRE = 72 / 25.4;
/** A printer may be off by a millimetre; nothing stands nearer to an edge than that and a half. */
const PADDING = 2.5 * POINTS_A_MILLIMETRE;
const MOST_POINTS = 11;
const LEAST_POINTS = 4.5;
const STEP_POINTS = 0.25;

/** Draws labels on sheets of stickers, from a label on. The same labels and instant give the same bytes. */
export async function drawLabels(
  labels: readonly DrawnLabel[],
  job: LabelJob,
): Promise<Uint8Array<ArrayBuffer>> {
  const sheet: LabelSheet = LABEL_SHEETS[job.sheet];
  const doc = new PDFDocument({
    size: [sheet.page[0] * POINTS_A_MILLIMETRE, sheet.page[1] * POINTS_A_MILLIMETRE],
    margin: 0,
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: job.language,
    info: {
      Title: job.title,
      Creator: 'Sheafbook',
      Producer: 'Sheafbook',
      CreationDate: job.printedAt,
      ModDate: job.printedAt,
    },
  });
  const bytes = collect(doc);
  registerFaces(doc);
  const perSheet = labelsOnSheet(sheet);
  for (const [at, label] of labels.entries()) {
    const place = at + job.start - 1;
    if (at === 0 || place % perSheet === 0) doc.addPage();
    drawLabel(doc, label, boxOf(sheet, place % perSheet));
  }
  doc.end();
  return bytes;
}

type Box = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

function boxOf({ columns, label, corner, pitch }: LabelSheet, place: number): Box {
  const [column, row] = [place % columns, Math.floor(place / columns)];
  return {
    x: (corner[0] + column * pitch[0]) * POINTS_A_MILLIMETRE + PADDING,
    y: (corner[1] + row * pitch[1]) * POINTS_A_MILLIMETRE + PADDING,
    width: label[0] * POINTS_A_MILLIMETRE - 2 * PADDING,
    height: label[1] * POINTS_A_MILLIMETRE - 2 * PADDING,
  };
}

/** What stays empty for the pen at the foot of a sticker that is tall enough for it. Units: points. */
const PEN_ROOM = 15 * POINTS_A_MILLIMETRE;
const TALL_ENOUGH = 45 * POINTS_A_MILLIMETRE;

/** The mark to the left with its code beneath, for the camera and for the eye; the words to the right. */
function drawLabel(doc: Document, label: DrawnLabel, sticker: Box): void {
  const isTall = sticker.height >= TALL_ENOUGH;
  const box = isTall ? { ...sticker, height: sticker.height - PEN_ROOM } : sticker;
  const codeStyle: Style = { face: 'sans-bold', points: isTall ? 13 : 9 };
  const codeWidth = widthOf(doc, label.spelled, codeStyle);
  const size = Math.min(box.height - lineHeight(codeStyle) - 2, box.width * 0.32);
  const markWidth = Math.max(size, codeWidth);
  drawQr(doc, label.code, { x: box.x + (markWidth - size) / 2, y: box.y, size });
  const codeX = box.x + (markWidth - codeWidth) / 2;
  drawLine(doc, label.spelled, { x: codeX, y: box.y + size + 2, style: codeStyle });
  const gap = 6;
  const room = { width: box.width - markWidth - gap, height: box.height };
  let y = box.y;
  for (const { text, style } of fitWords(doc, label, room)) {
    drawLine(doc, text, { x: box.x + markWidth + gap, y, style });
    y += lineHeight(style);
  }
}

type Line = { readonly text: string; readonly style: Style };

/** The largest type in which every word stands whole: what a label says of allergens is never cut. */
function fitWords(doc: Document, label: DrawnLabel, room: { width: number; height: number }): Line[] {
  const setAt = (step: number) =>
    setWords(doc, label, { points: LEAST_POINTS + step * STEP_POINTS, width: room.width });
  let [fits, tooLarge] = [0, (MOST_POINTS - LEAST_POINTS) / STEP_POINTS + 1];
  while (tooLarge - fits > 1) {
    const middle = Math.floor((fits + tooLarge) / 2);
    const height = sumOf(setAt(middle).map(({ style }) => lineHeight(style)));
    if (height <= room.height) fits = middle;
    else tooLarge = middle;
  }
  return setAt(fits);
}

function setWords(
  doc: Document,
  { title, lines }: DrawnLabel,
  at: { points: number; width: number },
): Line[] {
  const set = (text: string, style: Style) =>
    wrap(doc, text, { width: at.width, style }).map((line) => ({ text: line, style }));
  return [
    ...set(title, { face: 'sans-bold', points: at.points * 1.3 }),
    ...lines.flatMap((line) => set(line, { face: 'sans', points: at.points })),
  ];
}

function collect(doc: Document): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  return new Promise((resolve, reject) => {
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
}
