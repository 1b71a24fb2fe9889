import { EVERY_PRINT } from '@sheafbook/keeping';
import PDFDocument from 'pdfkit';
import { type PaperContent, text } from '../content.ts';
import { drawBlocks } from './blocks.ts';
import { registerFaces } from './fonts.ts';
import { drawFooters, drawHead, type Frame, footHeight } from './frame.ts';
import { isTransliterated } from './in-latin.ts';
import { LARGE_POINTS, PLAIN_POINTS, type Sheet } from './sheet.ts';
import { beginStructure, unread } from './structure.ts';

/** Points of the two sizes that offices have. */
const PAPER_SIZES = { a4: [595.28, 841.89], letter: [612, 792] } as const;
const MARGIN = 42;

type PaperSize = keyof typeof PAPER_SIZES;
export type Drawing = Frame & {
  readonly size: PaperSize;
  readonly isLarge: boolean;
  /** Sheets with many columns lie across. */
  readonly isLandscape: boolean;
  readonly printedAt: Date;
};

/**
 * Draws a paper. The same content, frame and instant give the same bytes: pdfkit takes its dates and its file id from
 * what it is told here, and makes up nothing.
 */
export async function drawPaper(content: PaperContent, drawing: Drawing): Promise<Uint8Array<ArrayBuffer>> {
  const { words, language, size, isLandscape, printedAt } = drawing;
  const doc = new PDFDocument({
    size: [...PAPER_SIZES[size]],
    layout: isLandscape ? 'landscape' : 'portrait',
    margin: 0,
    bufferPages: true,
    autoFirstPage: false,
    pdfVersion: '1.7',
    lang: language,
    displayTitle: true,
    tagged: true,
    info: {
      Title: `${drawing.title} ${drawing.code}`,
      Author: drawing.storehouse,
      Creator: 'Sheafbook',
      Producer: 'Sheafbook',
      Subject: words.number(drawing.paperNo),
      CreationDate: printedAt,
      ModDate: printedAt,
    },
  });
  const bytes = collect(doc);
  registerFaces(doc);
  beginStructure(doc);
  const sheet = openSheet(doc, content, drawing);
  drawBlocks(sheet, content.blocks);
  drawBlocks(sheet, [text(EVERY_PRINT[language])]);
  if (isTransliterated(JSON.stringify([content, drawing.storehouse, drawing.title])))
    drawBlocks(sheet, [text(words.inLatin)]);
  unread(doc, () => drawFooters(sheet, drawing));
  doc.end();
  return bytes;
}

function openSheet(doc: Sheet['doc'], content: PaperContent, drawing: Drawing): Sheet {
  const scale = drawing.isLarge ? LARGE_POINTS / PLAIN_POINTS : 1;
  const addPage = (isFirst: boolean) => {
    doc.addPage();
    sheet.y = isFirst ? drawHead(sheet, drawing, content.about) : unread(doc, () => drawHead(sheet, drawing));
  };
  const [short, long] = PAPER_SIZES[drawing.size];
  const [pageWidth, pageHeight] = drawing.isLandscape ? [long, short] : [short, long];
  const sheet: Sheet = {
    doc,
    scale,
    left: MARGIN,
    width: pageWidth - 2 * MARGIN,
    bottom: () => pageHeight - footHeight({ scale }) - MARGIN / 2,
    nextPage: () => addPage(false),
    y: 0,
  };
  addPage(true);
  return sheet;
}

function collect(doc: Sheet['doc']): Promise<Uint8Array<ArrayBuffer>> {
  const chunks: Buffer[] = [];
  doc.on('data', (chunk: Buffer) => chunks.push(chunk));
  return new Promise((resolve, reject) => {
    doc.on('end', () => resolve(new Uint8Array(Buffer.concat(chunks))));
    doc.on('error', reject);
  });
}
