import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { create, type Font } from 'fontkit';
import { unpackWoff } from './woff.ts';

const require = createRequire(import.meta.url);

/**
 * The faces of a paper. Each has its own files, in the order in which they are asked for a character: plain Latin first,
 * then what else Latin has. The wide file has Latin, Vietnamese, Greek and Cyrillic in one, for the words that those lack.
 */
const FACES = {
  sans: {
    own: ['atkinson-hyperlegible-next', 400],
    wide: 'noto-sans/400Regular/NotoSans_400Regular.ttf',
  },
  'sans-bold': {
    own: ['atkinson-hyperlegible-next', 700],
    wide: 'noto-sans/700Bold/NotoSans_700Bold.ttf',
  },
  serif: {
    own: ['fraunces', 600],
    wide: 'noto-serif/600SemiBold/NotoSerif_600SemiBold.ttf',
  },
} as const;
const SUBSETS = ['latin', 'latin-ext'] as const;

export type Face = keyof typeof FACES;

type Fonts = ReadonlyMap<string, Font>;
let opened: Fonts | undefined;

/**
 * The fonts by their names. Each is opened once a process: a paper that reads the tables of its fonts again spends more
 * time on them than on all its drawing.
 */
function openFonts(): Fonts {
  opened ??= readFonts();
  return opened;
}

/** Makes the faces known to a document. What a paper uses of them is embedded, no more. */
export function registerFaces(doc: PDFKit.PDFDocument): void {
  // pdfkit takes a font that is open already; its types don't say so.
  for (const [name, font] of openFonts())
    doc.registerFont(name, font as unknown as PDFKit.Mixins.PDFFontSource);
}

/** The names of a face's own files as the document knows them. */
export const fontNames = (face: Face): readonly string[] => SUBSETS.map((subset) => `${face}-${subset}`);

/** The name of the file that has the letters which a face's own files lack. */
export const wideFontName = (face: Face): string => `${face}-wide`;

/** Which of some files has a character. */
export const fontWith = (names: readonly string[], character: string): string | undefined =>
  names.find((name) =>
    openFonts()
      .get(name)
      ?.hasGlyphForCodePoint(character.codePointAt(0) ?? 0),
  );

/**
 * A glyph keeps the character by which it was first asked for. One that is first asked for as a part of another, as the point
 * is by the colon, would be drawn well and copied as nothing; so each is asked for by its own character before any paper is.
 * In the wide file several characters share a glyph, so there the paper's own letters are the first to ask.
 */
function nameGlyphs(font: Font): Font {
  for (const character of font.characterSet) font.glyphForCodePoint(character);
  return font;
}

function readFonts(): Fonts {
  const fonts = new Map<string, Font>();
  const open = (file: Buffer) => create(file) as Font;
  for (const face of Object.keys(FACES) as Face[]) {
    const [family, weight] = FACES[face].own;
    for (const subset of SUBSETS) {
      const path = `@fontsource/${family}/files/${family}-${subset}-${weight}-normal.woff`;
      fonts.set(`${face}-${subset}`, nameGlyphs(open(unpackWoff(readFileSync(require.resolve(path))))));
    }
    const wide = require.resolve(`@expo-google-fonts/${FACES[face].wide}`);
    fonts.set(wideFontName(face), open(readFileSync(wide)));
  }
  return fonts;
}
