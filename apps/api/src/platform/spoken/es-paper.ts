/** Papers, and what a pen wrote on them, in Spanish. */
export const ES_PAPER: Readonly<Record<string, string>> = {
  'Nothing of this buy was ordered.': 'De esta compra no se pidió nada.',
  'This buy has the orders {}: say which one.': 'Esta compra tiene los pedidos {}: diga cuál.',
  'Large is true or false.': 'La letra grande es sí o no.',
  'Blank is true or false.': 'En blanco es sí o no.',
  'Day and hour read like 2026-10-17T09:40.': 'Día y hora se escriben como 2026-10-17T09:40.',
  'The code of a paper is shorter than that.': 'El código de un papel es más corto.',
  'This is still to come; what is keyed in was written before.':
    'Esto aún no ha llegado; lo que se pasa al libro se escribió antes.',
  'The buy was planned after that; look at the day again.':
    'La compra se planeó después; mire otra vez el día.',
  'No paper here has this code.': 'Ningún papel tiene aquí este código.',
};
