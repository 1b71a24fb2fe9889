import type { Document } from './document.ts';

/** The sheaf of our name, as in the shell of the screens, 28 units wide. */
const STROKES = [
  'M14 17V7M12.6 17C12 13 10.5 10 8.5 7.5M15.4 17c.6-4 2.1-7 4.1-9.5M11.4 17C10 14 8 12 5.5 10.8M16.6 17c1.4-3 3.4-5 5.9-6.2',
  'M13.6 20c-.4 2-1.6 4-3.6 5.500M14.4 20c.4 2 1.6 4 3.6 5.500M14 20v6',
  'M10.5 17.2h7M10.5 19.7h7',
] as const;
const EARS = [
  { x: 14, y: 4.5, turn: 0 },
  { x: 7.6, y: 5.4, turn: -30 },
  { x: 20.4, y: 5.4, turn: 30 },
  { x: 3.7, y: 9.7, turn: -62 },
  { x: 24.3, y: 9.7, turn: 62 },
] as const;

export function drawSheaf(doc: Document, at: { x: number; y: number; size: number }): void {
  doc
    .save()
    .translate(at.x, at.y)
    .scale(at.size / 28);
  for (const path of STROKES) doc.lineWidth(1.5).lineCap('round').path(path).stroke('black');
  for (const { x, y, turn } of EARS) {
    doc.save().rotate(turn, { origin: [x, y] });
    doc.ellipse(x, y, 1.35, 2.6).fill('black');
    doc.restore();
  }
  doc.restore();
}
