import type { Document } from './document.ts';
import { type Face, fontNames, fontWith, wideFontName } from './fonts.ts';
import { inLatin } from './in-latin.ts';
import { mark } from './structure.ts';
import type { Style } from './style.ts';

/** Line height over type size, as on screen. */
const LEADING = 1.32;
/** Figures stand under one another. The serif's are of one width already. */
const FEATURES = { features: ['kern', 'liga', 'tnum'] as PDFKit.Mixins.OpenTypeFeatures[] };

export const lineHeight = ({ points }: Style): number => points * LEADING;

/**
 * Thin spaces are in no file of ours; a no-break space is, and it must not break. A letter and its accent that were typed
 * as two are one, which fonts have.
 */
const tidy = (text: string): string => text.normalize('NFC').replaceAll(/[\u2009\u202f]/g, '\u00a0');

type Run = { readonly font: string; readonly text: string };

/**
 * The text in stretches of one font file each. A word that the face's own files don't have wholly is set in the wide file,
 * so that no letter stands in a word of another design. A character that no file has is written in Latin letters.
 */
function runsOf(text: string, { face }: Style): Run[] {
  const runs: { font: string; text: string }[] = [];
  for (const word of tidy(text).split(AFTER_SPACE))
    for (const run of runsOfWord(word, face)) {
      const last = runs.at(-1);
      if (last?.font === run.font) last.text += run.text;
      else runs.push(run);
    }
  return runs;
}

const AFTER_SPACE = /(?<=[ \u00a0])/;

function runsOfWord(word: string, face: Face): Run[] {
  const characters = [...word];
  const own = characters.map((character) => fontWith(fontNames(face), character));
  const wide = wideFontName(face);
  const isWide = own.includes(undefined) && characters.every((character) => fontWith([wide], character));
  if (isWide) return [{ font: wide, text: word }];
  return characters.map((character, at) => {
    const font = own[at] ?? fontWith([wide], character);
    return font === undefined
      ? { font: fontNames(face)[0] ?? wide, text: inLatin(character) }
      : { font, text: character };
  });
}

type MeasuredRun = Run & { /** At one point of type size. */ readonly width: number };

/** What was measured, kept as long as its document: a table measures its words again and again. */
const measured = new WeakMap<Document, Map<string, readonly MeasuredRun[]>>();
/** Shaping works in whole font units, so a width is measured large and scaled down. */
const MEASURED_AT = 100;

function measuredRuns(doc: Document, text: string, style: Style): readonly MeasuredRun[] {
  const ofDocument = measured.get(doc) ?? new Map<string, readonly MeasuredRun[]>();
  measured.set(doc, ofDocument);
  const key = `${style.face} ${text}`;
  const runs = ofDocument.get(key) ?? runsOf(text, style).map((run) => measure(doc, run));
  ofDocument.set(key, runs);
  return runs;
}

function measure(doc: Document, run: Run): MeasuredRun {
  doc.font(run.font).fontSize(MEASURED_AT);
  return { ...run, width: doc.widthOfString(run.text, FEATURES) / MEASURED_AT };
}

export const widthOf = (doc: Document, text: string, style: Style): number =>
  measuredRuns(doc, text, style).reduce((sum, run) => sum + run.width, 0) * style.points;

/** Draws one line with its top at `y`, its left or its right edge at `x`. */
export function drawLine(
  doc: Document,
  text: string,
  at: { x: number; y: number; style: Style; align?: 'left' | 'right' | undefined },
): void {
  const { style, align = 'left' } = at;
  let x = align === 'right' ? at.x - widthOf(doc, text, style) : at.x;
  mark(doc, () => {
    for (const run of measuredRuns(doc, text, style)) {
      doc.font(run.font).fontSize(style.points).fillColor('black');
      doc.text(run.text, x, at.y, { lineBreak: false, ...FEATURES });
      x += run.width * style.points;
    }
  });
}

/** Breaks a text into lines of at most `width` points, at spaces; a word that is wider than that is cut. */
export function wrap(
  doc: Document,
  text: string,
  { width, style }: { width: number; style: Style },
): string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(doc, paragraph, { width, style }));
}

function wrapParagraph(doc: Document, text: string, to: { width: number; style: Style }): string[] {
  const lines: string[] = [];
  const space = widthOf(doc, ' ', to.style);
  let line: { text: string; width: number } | undefined;
  for (const word of text.split(' ').flatMap((whole) => cutWord(doc, whole, to))) {
    const width = widthOf(doc, word, to.style);
    if (line && line.width + space + width > to.width + ROUNDING) {
      lines.push(line.text);
      line = undefined;
    }
    line = line ? { text: `${line.text} ${word}`, width: line.width + space + width } : { text: word, width };
  }
  return [...lines, line?.text ?? ''];
}

/** Points that adding up words may differ from the whole line. */
const ROUNDING = 0.01;

function cutWord(doc: Document, word: string, { width, style }: { width: number; style: Style }): string[] {
  if (widthOf(doc, word, style) <= width + ROUNDING) return [word];
  const parts: string[] = [];
  let part = '';
  for (const character of word) {
    if (part !== '' && widthOf(doc, part + character, style) > width) {
      parts.push(part);
      part = '';
    }
    part += character;
  }
  return [...parts, part];
}

/** The widest word that may not be cut, in points. */
export function longestWord(doc: Document, text: string, style: Style): number {
  return Math.max(0, ...text.split(/[ \n]/).map((word) => widthOf(doc, word, style)));
}
