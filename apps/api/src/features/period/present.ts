export function presentPeriods(book: {
  closedThrough: string | null;
  closes: readonly { closedThrough: string; closedAt: Date; closedBy: string }[];
}) {
  return {
    closedThrough: book.closedThrough,
    closes: book.closes.map(({ closedThrough, closedAt, closedBy }) => ({
      closedThrough,
      closedAt: closedAt.toISOString(),
      closedBy,
    })),
  };
}
