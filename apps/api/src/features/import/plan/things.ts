import type { equipmentItems, foods } from '@sheafbook/db/tables';
import { ALLERGEN_WORDS, GLUTEN, GROUPS, NONE } from '../sheet/choices.ts';
import { foldText } from '../sheet/kinds.ts';
import type { RowReader } from '../sheet/row-reader.ts';
import { addFood, findFood, type Known } from './book.ts';
import type { Planned } from './planned.ts';

export type NewFood = typeof foods.$inferInsert & { readonly foodId: string };
export type NewItem = Pick<
  typeof equipmentItems.$inferInsert,
  'name' | 'kindNote' | 'partsList' | 'valueMinorUnits' | 'keptWhere'
>;

/** A food of the group's own. One of the same name or code is there already and stays as it is. */
export function planFood(row: RowReader, known: Known, foodId: string): Planned<NewFood> {
  const nameEn = row.needed('name') ?? '';
  const nameEs = row.text('spanish') || nameEn;
  const foodCode =
    row.text('code', 80) ||
    foldText(nameEn)
      .replace(/[^a-z0-9]+/g, '-')
      .replace(/^-+|-+$/g, '') ||
    'food';
  if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(foodCode)) row.refuse('code', 'code-shape');
  const foodGroup = row.choice('group', GROUPS) ?? '';
  const stated = row.needed('allergens', 300) !== undefined;
  const allergens = (stated && row.choices('allergens', ALLERGEN_WORDS, NONE)) || [];
  const gluten = row.choice('gluten', GLUTEN) ?? '';
  const kilocaloriesPer100Grams =
    row.raw('energy') === '' ? null : (row.number('energy', { least: 0, most: 950 }) ?? null);
  const source = row.needed('source', 300) ?? '';
  const there = findFood(known, nameEn) ?? findFood(known, foodCode);
  if (there) return { effect: { code: 'there', what: 'food', name: there.names[0] ?? nameEn } };
  addFood(known, {
    id: foodId,
    code: foodCode,
    names: [nameEn, nameEs],
    bulkMicrogramsPerMillilitre: null,
    isRetired: false,
  });
  const figures = { foodGroup, allergens, gluten, kilocaloriesPer100Grams, source };
  const own = { isOwn: true, needsMoistureTest: false, sourceRelease: 'the group’s own', sourceNumber: '' };
  return {
    effect: { code: 'new-food', name: nameEn, foodCode },
    made: { storehouseId: known.storehouseId, foodId, foodCode, nameEn, nameEs, ...figures, ...own },
  };
}

/** A thing that the group lends. One of the same name is there already and stays as it is. */
export function planItem(row: RowReader, known: Known): Planned<NewItem> {
  const name = row.needed('name') ?? '';
  const kindNote = row.text('kind', 300);
  const partsList = row.text('parts', 2000);
  const keptWhere = row.text('where', 300);
  const worth = row.raw('value') === '' ? null : (row.money('value') ?? null);
  if (worth !== null && worth < 0) row.refuse('value', 'negative');
  if (known.equipment.has(foldText(name))) return { effect: { code: 'there', what: 'equipment', name } };
  known.equipment.add(foldText(name));
  return {
    effect: { code: 'new-equipment', name, valueMinorUnits: worth },
    made: { name, kindNote, partsList, keptWhere, valueMinorUnits: worth },
  };
}
