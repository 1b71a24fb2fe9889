/** The address of something in a storehouse, as notices and next steps tell it. */
export const pathIn = (storehouseId: string, rest: string): string =>
  `/api/storehouses/${storehouseId}${rest}`;
