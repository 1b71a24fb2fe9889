/** Who may pass the doors of a shelf's lists, of photos of equipment, of what its places cost, and of a year on paper; see `LEAST_DUTY`. */
export const SHELF_DUTIES: Readonly<Record<string, string>> = {
  'POST /equipment/:item/photos': 'household equipment_keeper coordinator',
  'GET /equipment/:item/photos': 'member',
  'GET /equipment-use': 'equipment_keeper coordinator reviewer',
  'GET /hot-places': 'household coordinator packing_lead',
  'GET /shelf/papers/eat-first': 'household treasurer coordinator packing_lead reviewer',
  'GET /inspections/papers/sheet': 'household coordinator packing_lead',
  'GET /shelf/papers/list': 'household treasurer coordinator packing_lead reviewer',
  'GET /holds/:hold/papers/recall-notice': 'household coordinator packing_lead',
  'POST /holds/:hold/slips': 'coordinator packing_lead',
  'GET /rotation': 'household',
  'GET /rotation/store': 'coordinator packing_lead treasurer reviewer',
  'GET /year-review/paper': 'coordinator treasurer reviewer',
};
