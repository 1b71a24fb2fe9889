import encodeQR from 'qr';
import type { Document } from './document.ts';

/** Draws a QR code of black squares, `size` points wide without its quiet zone, which the caller leaves white. */
export function drawQr(doc: Document, text: string, at: { x: number; y: number; size: number }): void {
  const bordered = encodeQR(text, 'raw', { ecc: 'medium', border: 1 });
  const modules = bordered.slice(1, -1).map((line) => line.slice(1, -1));
  const step = at.size / modules.length;
  for (const [row, line] of modules.entries())
    for (let from = 0; from < line.length; from += 1) {
      if (!line[from]) continue;
      let to = from;
      while (line[to + 1]) to += 1;
      doc.rect(at.x + from * step, at.y + row * step, (to - from + 1) * step, step);
      from = to;
    }
  doc.fill('black');
}
