import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';

import { unpackWoff } from './woff.ts';

const require = createRequire(import.meta.url);

/** A face in the order in which its files are asked for a character: plain Latin first, then what else Latin has. */
const FACES = {
  sans: ['atkinson-hyperlegible-next', 400],
  'sans-bold': ['atkinson-hyperlegible-next', 700],
  serif: ['fraunces', 600],
} as const;
const SUBSETS = ['latin', 'latin-ext'] as const;

export type Face = keyof typeof FACES;
type Registering = {
  registerFont(name: string, source: Buffer): unknown;
};

let files: Map<string, Buffer> | undefined;

/** Makes the faces known to a document. The files are read once a process; what a paper uses of them is embedded. */
export function registerFaces(doc: Registering): void {
  files ??= readFiles();
  for (const [name, file] of files) doc.registerFont(name, file);
}

/** The names of a face's files as the document knows them. */
export const fontNames = (face: Face): readonly string[] => SUBSETS.map((subset) => `${face}-${subset}`);

function readFiles(): Map<string, Buffer> {
  const read = new Map<string, Buffer>();
  for (const [face, [family, weight]] of Object.entries(FACES))
    for (const subset of SUBSETS) {
      const path = `@fontsource/${family}/files/${family}-${subset}-${weight}-normal.woff`;
      read.set(`${face}-${subset}`, unpackWoff(readFileSync(require.resolve(path))));
    }
  return read;
}
