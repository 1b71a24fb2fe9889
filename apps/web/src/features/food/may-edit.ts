/** As the server decides it; a page only leaves out what would be refused. */
export const mayEditFoods = (duties: readonly string[]): boolean =>
  duties.includes('coordinator') || duties.includes('packing_lead');
