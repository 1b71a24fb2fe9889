/** Papers, and what a pen wrote on them, in Spanish. */
export const ES_PAPER: Readonly<Record<string, string>> = {
  'Nothing of this buy was ordered.': 'De esta compra no se pidió nada.',
  'This buy has the orders {}: say which one.': 'Esta compra tiene los pedidos {}: diga cuál.',
  'Large is true or false.': 'La letra grande es sí o no.',
  'Blank is true or false.': 'En blanco es sí o no.',
};
