import type { Context } from '../../platform/context.ts';
import { Problem } from '../../platform/problem.ts';
import { withTx } from '../../platform/with-tx.ts';
import { presentLabel } from '../label/present.ts';
import { type LabelFacts, readLabels } from '../label/use-cases.ts';
import { readBlank } from '../label-ahead/use-cases.ts';
import { loadStorehouse } from '../storehouse/queries.ts';
import { makeLabel } from './content/labels.ts';
import { formatsOf } from './formats.ts';
import { drawLabels } from './layout/draw-labels.ts';
import type { LabelSheetQuery } from './schema.ts';

/** The labels of one's own containers. */
export async function printLabels(context: Context, query: LabelSheetQuery) {
  return drawSheet(context, await readLabels(context, { codes: query.codes }), query);
}

/** The labels made for a packing day that still wait for something to be filled under them. */
export async function printLabelsAhead(context: Context, sessionId: string, query: LabelSheetQuery) {
  return drawSheet(context, await readBlank(context, sessionId, query.codes), query);
}

/** A sheet of stickers has no code of its own and is not kept: each label leads back to its container. */
async function drawSheet(context: Context, labels: readonly LabelFacts[], query: LabelSheetQuery) {
  const { actor } = context;
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
