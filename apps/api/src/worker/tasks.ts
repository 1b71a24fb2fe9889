import { lapseEquipmentOffers } from '../features/booking/use-cases.ts';
import { freeUnfetchedEquipment } from '../features/booking/use-cases-unfetched.ts';
import { tellLateOwners } from '../features/hold/use-cases.ts';
import { sendLetter } from '../features/letter/use-cases.ts';
import { freeUnusedSlots } from '../features/packing-session/use-cases-arrival.ts';
import { remind } from '../features/reminder/use-cases-remind.ts';
import type { WorkTasks } from '../platform/work/task.ts';

/** Every kind of work in the background, by the name that `enqueue` calls it. */
export const TASKS: WorkTasks = {
  'send-letter': sendLetter,
  remind,
  'lapse-equipment-offers': lapseEquipmentOffers,
  'free-unfetched-equipment': freeUnfetchedEquipment,
  'tell-late-owners': tellLateOwners,
  'free-unused-packing-times': freeUnusedSlots,
};

/** What is done in every storehouse every so many minutes, of which there are a whole number in an hour. */
export const PERIODIC: readonly { readonly task: string; readonly everyMinutes: number }[] = [
  { task: 'remind', everyMinutes: 15 },
  { task: 'free-unfetched-equipment', everyMinutes: 15 },
  { task: 'tell-late-owners', everyMinutes: 15 },
  { task: 'free-unused-packing-times', everyMinutes: 5 },
];
