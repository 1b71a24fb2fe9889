import type PDFDocument from 'pdfkit';
import { fontNames } from './fonts.ts';
import type { Style } from './style.ts';

export type Document = InstanceType<typeof PDFDocument>;

/** Line height over type size, as on screen. */
const LEADING = 1.32;
/** Figures stand under one another. The serif's are of one width already. */
const FEATURES = { features: ['kern', 'liga', 'tnum'] as PDFKit.Mixins.OpenTypeFeatures[] };

export const lineHeight = ({ points }: Style): number => points * LEADING;

/** Thin spaces are in no file of ours; a no-break space is, and it must not break. */
const tidy = (text: string): string => text.replaceAll(/[\u2009\u202f]/g, '\u00a0');

type Run = { readonly font: string; readonly text: string };

/** The text in stretches of one font file each. A character that no file has prints as a question mark. */
function runsOf(doc: Document, text: string, { face }: Style): Run[] {
  const runs: { font: string; text: string }[] = [];
  for (const character of tidy(text)) {
    const found = fontOf(doc, face, character);
    const [font, shown] = found === null ? [fontNames(face)[0] ?? '', '?'] : [found, character];
    const last = runs.at(-1);
    if (last?.font === font) last.text += shown;
    else runs.push({ font, text: shown });
  }
  return runs;
}

/** Which file of a face has a character: the files are the same for every paper, so it is asked once a process. */
const known = new Map<string, string | null>();

function fontOf(doc: Document, face: Style['face'], character: string): string | null {
  const key = `${face} ${character}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const found = fontNames(face).find((name) => hasCharacter(doc, name, character)) ?? null;
  known.set(key, found);
  return found;
}

/** pdfkit keeps the font file behind the name that was chosen last; its types don't say so. */
type WithFont = { _font: { font: { hasGlyphForCodePoint(codePoint: number): boolean } } };

function hasCharacter(doc: Document, name: string, character: string): boolean {
  const { font } = (doc.font(name) as unknown as WithFont)._font;
  return font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0);
}

/** Widths at one point, kept as long as their document: a table measures its words again and again. */
const widths = new WeakMap<Document, Map<string, number>>();
/** Shaping works in whole font units, so a width is measured large and scaled down. */
const MEASURED_AT = 100;

export function widthOf(doc: Document, text: string, style: Style): number {
  const ofDocument = widths.get(doc) ?? new Map<string, number>();
  widths.set(doc, ofDocument);
  const key = `${style.face} ${text}`;
  const width = ofDocument.get(key) ?? measure(doc, text, style);
  ofDocument.set(key, width);
  return width * style.points;
}

function measure(doc: Document, text: string, style: Style): number {
  const points = runsOf(doc, text, style).reduce((sum, run) => {
    doc.font(run.font).fontSize(MEASURED_AT);
    return sum + doc.widthOfString(run.text, FEATURES);
  }, 0);
  return points / MEASURED_AT;
}

/** Draws one line with its top at `y`, its left or its right edge at `x`. */
export function drawLine(
  doc: Document,
  text: string,
  at: { x: number; y: number; style: Style; align?: 'left' | 'right' | undefined },
): void {
  const { style, align = 'left' } = at;
  let x = align === 'right' ? at.x - widthOf(doc, text, style) : at.x;
  for (const run of runsOf(doc, text, style)) {
    doc.font(run.font).fontSize(style.points).fillColor('black');
    doc.text(run.text, x, at.y, { lineBreak: false, ...FEATURES });
    x += doc.widthOfString(run.text, FEATURES);
  }
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
