import { assert } from '@sheafbook/units';
import type { Document } from './document.ts';

/** A part of a paper as a screen reader tells it: a heading, a table, one of its cells. */
export type Element = ReturnType<Document['struct']>;
type Kind = 'Document' | 'H1' | 'H2' | 'P' | 'Div' | 'L' | 'LI' | 'Lbl' | 'LBody' | 'Figure' | TableKind;
type TableKind = 'Table' | 'TR' | 'TH' | 'TD';
type Options = NonNullable<Parameters<Document['struct']>[1]>;

/** What stands open, outermost first; null is for what is drawn on every page and read out on none. */
const opened = new WeakMap<Document, (Opened | null)[]>();
type Opened = { readonly element: Element; readonly kind: Kind };
const stackOf = (doc: Document): (Opened | null)[] => {
  const stack = opened.get(doc);
  assert(stack, 'a document has its structure before anything is drawn on it');
  return stack;
};

/** Begins the tree of a document, which everything that is read out hangs on. */
export function beginStructure(doc: Document): void {
  const element = doc.struct('Document');
  doc.addStructure(element);
  opened.set(doc, [{ element, kind: 'Document' }]);
}

/** Draws something as one part of what stands open. */
export function within<Result>(doc: Document, kind: Kind, draw: () => Result, options?: Options): Result {
  return into(doc, newPart(doc, kind, options), draw);
}

export type Part = Opened;

/** A part that is come back to: a cell whose lines go over two pages. */
export function newPart(doc: Document, kind: Kind, options?: Options): Part {
  const outer = stackOf(doc).at(-1);
  assert(outer, 'what is read out has no part in what is not');
  const element = doc.struct(kind, kind === 'TH' ? HEAD_OF_COLUMN : options);
  outer.element.add(element);
  return { element, kind };
}

// pdfkit writes the scope of a head; its types don't know it.
const HEAD_OF_COLUMN = { scope: 'Column' } as Options;

export function into<Result>(doc: Document, part: Part | null, draw: () => Result): Result {
  const stack = stackOf(doc);
  stack.push(part);
  const result = draw();
  stack.pop();
  return result;
}

/** Draws what a reader of the page sees and a listener need not hear: rules, running heads, footers. */
export const unread = <Result>(doc: Document, draw: () => Result): Result => into(doc, null, draw);

/** Puts marks on the page under the part that stands open; everything that is drawn goes through here. */
export function mark(doc: Document, draw: () => void): void {
  if (!opened.has(doc)) {
    draw(); // a sheet of stickers is for the eye and the camera, and has no parts to tell
    return;
  }
  const part = stackOf(doc).at(-1);
  if (!part) {
    doc.markContent('Artifact', { type: 'Layout' });
    draw();
    doc.endMarkedContent();
    return;
  }
  const content = doc.markStructureContent(part.kind);
  draw();
  doc.endMarkedContent();
  part.element.add(content);
}
