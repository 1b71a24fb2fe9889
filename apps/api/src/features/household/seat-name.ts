/** What a household and its persons are called once they have left: their seat alone stays in the book. */
export const seatName = (seat: number): string => `Seat ${seat}`;

export const isSeatName = (name: string): boolean => /^\s*seat\s*\d+\s*$/i.test(name);
