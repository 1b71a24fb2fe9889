import type { Tx } from '@sheafbook/db';
import {
  bookingFoods,
  bookings,
  containers,
  equipmentWishFoods,
  foods,
  lots,
  packingPours,
  packingWishes,
} from '@sheafbook/db/tables';
import { and, eq, inArray, type SQL, sql } from 'drizzle-orm';

/** A food that goes through a thing, with what it leaves there. */
export type FoodThrough = {
  readonly foodId: string;
  readonly nameEn: string;
  readonly nameEs: string;
  readonly allergens: readonly string[];
  readonly gluten: string;
};

/**
 * Of a booking by its alias in the statement: the foods that were named for it, or those of the packing day that it is
 * for, as far as they are wished or poured. An empty list where nobody told any.
 */
const foodsThrough = (booking: SQL) => sql<FoodThrough[]>`(
  select coalesce(jsonb_agg(jsonb_build_object('foodId', f.food_id, 'nameEn', f.name_en, 'nameEs', f.name_es,
    'allergens', f.allergens, 'gluten', f.gluten) order by f.food_code), '[]'::jsonb)
  from ${foods} f
  where f.storehouse_id = ${booking}.storehouse_id and f.food_id in (
    select s.food_id from ${bookingFoods} s
    where s.storehouse_id = ${booking}.storehouse_id and s.booking_id = ${booking}.booking_id
    union
    select w.food_id from ${packingWishes} w
    where w.storehouse_id = ${booking}.storehouse_id and w.packing_session_id = ${booking}.session_id
    union
    select l.food_id from ${packingPours} o
    join ${containers} c on c.storehouse_id = o.storehouse_id and c.container_id = o.container_id
    join ${lots} l on l.storehouse_id = c.storehouse_id and l.lot_id = c.lot_id
    where o.storehouse_id = ${booking}.storehouse_id and o.packing_session_id = ${booking}.session_id))`;

/** What goes through a thing in a booking. Where `bookings` is joined. */
export const ownFoods = foodsThrough(sql`${bookings}`);

/**
 * What went through the same piece last before a booking, in a loan or on a packing day: null where nothing did, and an
 * empty list where nobody told. Where `bookings` is joined.
 */
export const foodsBefore = sql<FoodThrough[] | null>`(
  select ${foodsThrough(sql`p`)} from ${bookings} p
  where p.storehouse_id = ${bookings.storehouseId} and p.equipment_unit_id = ${bookings.equipmentUnitId}
    and p.purpose in ('loan', 'session') and p.state in ('booked', 'out', 'returned')
    and p.ends_at <= ${bookings.startsAt}
  order by p.ends_at desc limit 1)`;

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

export async function insertWishFoods(
  tx: Tx,
  { storehouseId, equipmentWishId }: { storehouseId: string; equipmentWishId: string },
  foodIds: readonly string[],
): Promise<void> {
  if (foodIds.length > 0)
    await tx
      .insert(equipmentWishFoods)
      .values(foodIds.map((foodId) => ({ storehouseId, equipmentWishId, foodId })));
}

/** The foods that a household that waits for a thing means to put through it. */
export async function listFoodIdsOfWish(
  tx: Tx,
  { storehouseId, equipmentWishId }: { storehouseId: string; equipmentWishId: string },
): Promise<string[]> {
  const rows = await tx
    .select({ foodId: equipmentWishFoods.foodId })
    .from(equipmentWishFoods)
    .where(
      and(
        eq(equipmentWishFoods.storehouseId, storehouseId),
        eq(equipmentWishFoods.equipmentWishId, equipmentWishId),
      ),
    );
  return rows.map(({ foodId }) => foodId);
}
