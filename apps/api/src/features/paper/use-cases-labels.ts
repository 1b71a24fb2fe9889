import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentLabel } from '../label/present.ts';
import { readLabels } from '../label/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { makeLabel } from './content/labels.ts';
import { formatsOf } from './formats.ts';
import { drawLabels } from './layout/draw-labels.ts';
import type { LabelSheetQuery } from './schema.ts';

/** A sheet of stickers has no code of its own and is not kept: each label leads back to its container. */
export async function printLabels(context: Context, query: LabelSheetQuery) {
  const { actor } = context;
  const labels = await readLabels(context, { codes: query.codes });
  if (labels.length === 0) throw new Problem('nothing-to-label');
  const storehouse = await withTx(context, (tx) => loadStorehouse(tx, actor.storehouseId));
  const language = query.language ?? (storehouse.language === 'es' ? 'es' : 'en');
  const unit = query.unit ?? (storehouse.massDisplay === 'kg' ? 'kg' : 'lb');
  const formats = formatsOf({ language, unit, currency: actor.currency, timeZone: actor.timeZone });
  const drawn = labels.map((label) => makeLabel(presentLabel(label), formats, storehouse.name));
  return drawLabels(drawn, {
    sheet: query.sheet,
    start: query.start,
    title: formats.words.label.title,
    language,
    printedAt: context.now(),
  });
}
