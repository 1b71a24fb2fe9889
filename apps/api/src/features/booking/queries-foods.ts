import type { Tx } from '@sheafbook/db';
import { bookingFoods, bookings, foods } from '@sheafbook/db/tables';
import { and, eq, inArray, type SQL, sql } from 'drizzle-orm';

/** A food that goes through a thing, with what it leaves there. */
export type FoodThrough = {
  readonly foodId: string;
  readonly nameEn: string;
  readonly nameEs: string;
  readonly allergens: readonly string[];
  readonly gluten: string;
};

const foodsThrough = (bookingId: SQL) => sql<FoodThrough[]>`coalesce((
  select jsonb_agg(jsonb_build_object('foodId', f.food_id, 'nameEn', f.name_en, 'nameEs', f.name_es,
    'allergens', f.allergens, 'gluten', f.gluten) order by f.food_code)
  from ${bookingFoods} s join ${foods} f on f.storehouse_id = s.storehouse_id and f.food_id = s.food_id
  where s.storehouse_id = ${bookings.storehouseId} and s.booking_id = ${bookingId}), '[]'::jsonb)`;

/** What was said to go through a thing in a booking. Where `bookings` is joined. */
export const ownFoods = foodsThrough(sql`${bookings.bookingId}`);

/** What was said of the last loan of the same piece before a booking. Where `bookings` is joined. */
export const foodsBefore = foodsThrough(sql`(
  select p.booking_id from ${bookings} p
  where p.storehouse_id = ${bookings.storehouseId} and p.equipment_unit_id = ${bookings.equipmentUnitId}
    and p.purpose = 'loan' and p.state in ('booked', 'out', 'returned') and p.ends_at <= ${bookings.startsAt}
  order by p.ends_at desc limit 1)`);

/** The foods of these ids that the storehouse has. */
export async function listFoodsThrough(
  tx: Tx,
  storehouseId: string,
  foodIds: readonly string[],
): Promise<FoodThrough[]> {
  if (foodIds.length === 0) return [];
  const { foodId, nameEn, nameEs, allergens, gluten } = foods;
  return tx
    .select({ foodId, nameEn, nameEs, allergens, gluten })
    .from(foods)
    .where(and(eq(foods.storehouseId, storehouseId), inArray(foods.foodId, [...foodIds])));
}

export async function listFoodsOfBooking(
  tx: Tx,
  storehouseId: string,
  bookingId: string,
): Promise<FoodThrough[]> {
  const { foodId, nameEn, nameEs, allergens, gluten } = foods;
  return tx
    .select({ foodId, nameEn, nameEs, allergens, gluten })
    .from(bookingFoods)
    .innerJoin(
      foods,
      and(eq(foods.storehouseId, bookingFoods.storehouseId), eq(foods.foodId, bookingFoods.foodId)),
    )
    .where(and(eq(bookingFoods.storehouseId, storehouseId), eq(bookingFoods.bookingId, bookingId)));
}

export async function insertBookingFoods(
  tx: Tx,
  { storehouseId, bookingId }: { storehouseId: string; bookingId: string },
  foodIds: readonly string[],
): Promise<void> {
  if (foodIds.length > 0)
    await tx.insert(bookingFoods).values(foodIds.map((foodId) => ({ storehouseId, bookingId, foodId })));
}
