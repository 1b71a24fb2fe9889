import { codeFromNumber, spellCode } from '@sheafbook/units';
import { drawLabels } from '../../apps/api/src/features/paper/layout/draw-labels.ts';
import { LABEL_SHEET_NAMES } from '../../apps/api/src/features/paper/layout/label-sheets.ts';
import type { Row } from './table.ts';

const LABELS = 500;
const ROUNDS = 3;

/** 500 labels as PDF, fonts, marks and all, by the milliseconds that each sheet takes. */
export async function timeLabels(): Promise<Row[]> {
  const labels = Array.from({ length: LABELS }, (_, at) => {
    const code = codeFromNumber(at + 1, 6);
    return {
      code,
      spelled: spellCode(code),
      title: 'Hard red winter wheat',
      lines: [
        `Net 5 lb ${(at % 100) / 10} oz · ${2500 + at} g`,
        'Packed 1 Sept 2026, oxygen absorber',
        'Contains wheat, gluten.',
        'Ashdown, seat 1 · lot Autumn grain',
        'Eat by about 2056 (estimate)',
        'Packed without oxygen: if it is swollen, wet or smells wrong, do not eat it.',
        'Packed at home, Alder Row Storehouse',
      ],
    };
  });
  const rows: Row[] = [];
  for (const sheet of LABEL_SHEET_NAMES) {
    const figures: number[] = [];
    for (let round = 0; round < ROUNDS; round += 1) {
      const startedAt = performance.now();
      await drawLabels(labels, { sheet, start: 1, title: 'Labels', language: 'en', printedAt: new Date(0) });
      figures.push(performance.now() - startedAt);
    }
    rows.push({ what: `${LABELS} labels as PDF, ${sheet}`, figures, unit: 'ms', promise: { atMost: 5000 } });
  }
  return rows;
}
