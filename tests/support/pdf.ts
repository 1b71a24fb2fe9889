import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';
import decodeQR from 'qr/decode.js';
import type { Answer, Caller } from './app.ts';

/** A stretch of text where it stands, in points from the top left of its page. */
export type PdfText = { text: string; x: number; y: number; right: number; points: number };
export type PdfPage = {
  width: number;
  height: number;
  texts: PdfText[];
  /** All its text in the order in which it was drawn, with plain spaces. */
  text: string;
  /** Each of its QR codes as pixels, in the order of drawing, for whatever decoder. */
  marks: Mark[];
  /** What its QR code says, read from the squares that were drawn. */
  qr: string;
};
export type Mark = { data: Uint8ClampedArray; width: number; height: number };
export type Pdf = {
  pages: PdfPage[];
  /** The text of all pages. */
  text: string;
  title: string;
  language: string;
  fonts: { name: string; isEmbedded: boolean }[];
  colours: string[];
};

/** Reads a PDF by a library that had no part in writing it. */
export async function readPdf(bytes: Uint8Array): Promise<Pdf> {
  const task = getDocument({ data: bytes.slice(), disableFontFace: true, useSystemFonts: false });
  const pdf = await task.promise;
  const { info } = (await pdf.getMetadata()) as { info: { Title?: string; Language?: string } };
  const fonts = new Map<string, { name: string; isEmbedded: boolean }>();
  const colours = new Set<string>();
  const pages: PdfPage[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const drawn = await page.getOperatorList(); // fills commonObjs with the fonts
    const [, , width = 0, height = 0] = page.view;
    const texts = listTexts((await page.getTextContent()).items as TextItem[], height);
    for (const name of new Set(texts.map((text) => text.font))) {
      const font = page.commonObjs.get(name) as { name: string; missingFile: boolean };
      fonts.set(font.name, { name: font.name, isEmbedded: !font.missingFile });
    }
    for (const colour of listColours(drawn)) colours.add(colour);
    pages.push({
      width,
      height,
      texts: texts.map(({ font: _, ...text }) => text),
      text: texts.map(({ text }) => text).join(' '),
      marks: marksOf(drawn),
      qr: readQr(drawn),
    });
  }
  await task.destroy();
  return {
    pages,
    text: pages.map((page) => page.text).join(' '),
    title: info.Title ?? '',
    language: info.Language ?? '',
    fonts: [...fonts.values()],
    colours: [...colours],
  };
}

type Canvas = { readonly toBuffer: (kind: 'image/png') => Buffer };
type Sheet = { readonly canvas: Canvas; readonly context: never };
type CanvasFactory = { readonly create: (width: number, height: number) => Sheet };

/** Each page as a picture, half as large again as a point is wide. */
export async function drawPdf(bytes: Uint8Array): Promise<Buffer[]> {
  const task = getDocument({ data: Uint8Array.from(bytes), disableFontFace: true, useSystemFonts: false });
  const pdf = await task.promise;
  const pictures: Buffer[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const viewport = page.getViewport({ scale: 1.5 });
    const { canvas, context } = (pdf.canvasFactory as CanvasFactory).create(
      Math.ceil(viewport.width),
      Math.ceil(viewport.height),
    );
    await page.render({ canvas: canvas as never, canvasContext: context, viewport }).promise;
    pictures.push(canvas.toBuffer('image/png'));
  }
  await task.destroy();
  return pictures;
}

/** Prints a paper as a person does, and reads what came. */
export async function printed(caller: Caller, path: string): Promise<Pdf> {
  return readPdf(pdfOf(await caller.get(path)));
}

export function pdfOf(answer: Answer): Uint8Array {
  const { status, body, headers } = answer;
  if (status !== 200 || headers.get('Content-Type') !== 'application/pdf')
    throw new Error(`no PDF but ${status} ${JSON.stringify(body)}`);
  return body;
}

/**
 * Everything that a body says, to look for a secret in it. Of a paper that is its text as printed, and once more without
 * the marks inside numbers, so that 1234567 is found where 12,345.67 is printed.
 */
export async function textOf(body: unknown): Promise<string> {
  if (typeof body === 'string') return body;
  if (!(body instanceof Uint8Array)) return JSON.stringify(body);
  const text = await wordsOf(body);
  return [text, text.replaceAll(/(?<=\d)[.,](?=\d)/g, '')].join('\n');
}

/** The words alone, which is quick: neither fonts nor drawings are looked at. */
export async function wordsOf(bytes: Uint8Array): Promise<string> {
  const task = getDocument({ data: bytes.slice(), disableFontFace: true, useSystemFonts: false });
  const pdf = await task.promise;
  const words: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { height = 0 } = page.getViewport({ scale: 1 });
    words.push(
      ...listTexts((await page.getTextContent()).items as TextItem[], height).map(({ text }) => text),
    );
  }
  await task.destroy();
  return words.join(' ');
}

type TextItem = { str: string; transform: number[]; width: number; height: number; fontName: string };

/** Points by which the letters of one word may stand apart. */
const TOUCHING = 0.5;

/** A word may be set from two font files, which a reader sees no more than the eye does. */
function joinTouching(items: readonly TextItem[]): TextItem[] {
  const joined: TextItem[] = [];
  for (const item of items) {
    const last = joined.at(-1);
    const [, , , , x = 0, y] = item.transform;
    const [, , , , left = 0, line] = last?.transform ?? [];
    const gap = x - left - (last?.width ?? 0);
    const isOneWord = last && last.str !== '' && y === line && Math.abs(gap) < TOUCHING;
    if (isOneWord) {
      last.str += item.str;
      last.width += item.width;
    } else joined.push({ ...item });
  }
  return joined;
}

function listTexts(items: readonly TextItem[], pageHeight: number) {
  return joinTouching(items)
    .filter(({ str }) => str.trim() !== '')
    .map(({ str, transform, width, height, fontName }) => {
      const [, , , , x = 0, y = 0] = transform;
      const text = str.replaceAll('\u00a0', ' ');
      return { text, x, y: pageHeight - y, right: x + width, points: height, font: fontName };
    });
}

type Drawn = { fnArray: number[]; argsArray: unknown[] };

function listColours({ fnArray, argsArray }: Drawn): string[] {
  return fnArray.flatMap((operation, at) =>
    operation === OPS.setFillRGBColor || operation === OPS.setStrokeRGBColor
      ? [String((argsArray[at] as unknown[])[0])]
      : [],
  );
}

const MOVE = 0;
const LINE = 1;
const CLOSE = 4;
const PIXELS_A_MODULE = 4;

/** Filled shapes of a page, as the paths that were drawn. */
const filledOf = (drawn: Drawn): number[][] =>
  drawn.fnArray.flatMap((operation, at) => {
    const [then, path] = (drawn.argsArray[at] ?? []) as [number, [ArrayLike<number>]];
    return operation === OPS.constructPath && then === OPS.fill ? [Array.from(path[0])] : [];
  });

/** The largest filled shape of a page is its QR code: draws it as pixels and has it read like a photograph. */
function readQr(drawn: Drawn): string {
  const [largest = []] = filledOf(drawn).toSorted((a, b) => b.length - a.length);
  return decodeQR(pixelsOf(squaresOf(largest)));
}

/** Shapes of many rectangles are QR codes; what else is filled on a paper has only a few. */
const FEWEST_SQUARES = 50;

const marksOf = (drawn: Drawn): Mark[] =>
  filledOf(drawn)
    .filter((path) => path.filter((part) => part === CLOSE).length >= FEWEST_SQUARES && isOfRectangles(path))
    .map((path) => pixelsOf(squaresOf(path)));

function isOfRectangles(path: readonly number[]): boolean {
  for (let at = 0; at < path.length; ) {
    if (path[at] === CLOSE) at += 1;
    else if (path[at] === MOVE || path[at] === LINE) at += 3;
    else return false;
  }
  return true;
}

function pixelsOf(squares: ReturnType<typeof squaresOf>): Mark {
  const [left, top] = [Math.min(...squares.map(({ x }) => x)), Math.min(...squares.map(({ y }) => y))];
  const module = Math.min(...squares.map(({ height }) => height));
  const across = Math.round((Math.max(...squares.map(({ x, width }) => x + width)) - left) / module);
  const side = (across + 8) * PIXELS_A_MODULE;
  const data = new Uint8ClampedArray(side * side * 4).fill(255);
  for (const { x, y, width } of squares) {
    const [column, row] = [Math.round((x - left) / module), Math.round((y - top) / module)];
    blacken(data, side, { column: column + 4, row: row + 4, across: Math.round(width / module) });
  }
  return { width: side, height: side, data };
}

function blacken(
  data: Uint8ClampedArray,
  side: number,
  { column, row, across }: { column: number; row: number; across: number },
): void {
  for (let y = row * PIXELS_A_MODULE; y < (row + 1) * PIXELS_A_MODULE; y += 1)
    for (let x = column * PIXELS_A_MODULE; x < (column + across) * PIXELS_A_MODULE; x += 1)
      data.fill(0, (y * side + x) * 4, (y * side + x) * 4 + 3);
}

/** A path of rectangles as pdfjs gives it: an operation and its point, four to a rectangle, and a closing one. */
function squaresOf(path: readonly number[]) {
  const squares: { x: number; y: number; width: number; height: number }[] = [];
  let points: [number, number][] = [];
  for (let at = 0; at < path.length; ) {
    const operation = path[at];
    if (operation === MOVE || operation === LINE) {
      if (operation === MOVE) points = [];
      points.push([path[at + 1] ?? 0, path[at + 2] ?? 0]);
      at += 3;
    } else if (operation === CLOSE) {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
      const [x, y] = [Math.min(...xs), Math.min(...ys)];
      squares.push({ x, y, width: Math.max(...xs) - x, height: Math.max(...ys) - y });
      at += 1;
    } else throw new Error(`a QR code is drawn by rectangles alone, not by operation ${operation}`);
  }
  return squares;
}

/** A part of a paper as a screen reader is told it, with the text that stands in it and in its parts. */
export type PdfPart = { readonly role: string; readonly text: string; readonly parts: readonly PdfPart[] };

type TreeNode = { role?: string; id?: string; children?: TreeNode[] };
type MarkedItem = { type?: string; id?: string; str?: string };

/** What a paper tells those who hear it, page by page. */
export async function readStructure(bytes: Uint8Array): Promise<PdfPart[]> {
  const task = getDocument({ data: bytes.slice(), disableFontFace: true, useSystemFonts: false });
  const pdf = await task.promise;
  const pages: PdfPart[] = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent({ includeMarkedContent: true });
    const tree = (await page.getStructTree()) as TreeNode | null;
    if (!tree) throw new Error(`page ${number} has no structure`);
    pages.push(partOf(tree, textsByMark(items as MarkedItem[])));
  }
  await task.destroy();
  return pages;
}

function textsByMark(items: readonly MarkedItem[]): Map<string, string> {
  const texts = new Map<string, string>();
  const open: (string | undefined)[] = [];
  for (const { type, id, str } of items) {
    if (type === 'beginMarkedContent' || type === 'beginMarkedContentProps') open.push(id);
    else if (type === 'endMarkedContent') open.pop();
    const mark = open.at(-1);
    if (mark !== undefined && str !== undefined) texts.set(mark, `${texts.get(mark) ?? ''}${str}`);
  }
  return texts;
}

function partOf({ role = '', id, children = [] }: TreeNode, texts: ReadonlyMap<string, string>): PdfPart {
  if (id !== undefined) return { role, text: (texts.get(id) ?? '').replaceAll('\u00a0', ' '), parts: [] };
  const parts = children.map((child) => partOf(child, texts));
  return {
    role,
    text: parts
      .map(({ text }) => text)
      .filter(Boolean)
      .join(' '),
    parts: parts.filter((part) => part.role !== ''),
  };
}

/** All parts of one role, in the order in which they are told. */
export const partsOf = (part: PdfPart, role: string): PdfPart[] =>
  part.parts.flatMap((inner) => [...(inner.role === role ? [inner] : []), ...partsOf(inner, role)]);
