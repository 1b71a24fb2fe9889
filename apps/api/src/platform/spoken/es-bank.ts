/** The bank's lines and the cash tin, in Spanish. */
export const ES_BANK: Readonly<Record<string, string>> = {
  'This file is no table of a bank’s lines. Ask the bank for a CSV file.':
    'Este archivo no es una tabla de movimientos bancarios. Pida al banco un archivo CSV.',
  'A file has {} lines at most. Take a shorter span.':
    'Un archivo tiene como mucho {} líneas. Tome un periodo más corto.',
  'Name one column of amounts, or one of what came in and one of what went out.':
    'Indique una columna de importes, o una de abonos y otra de cargos.',
  'This file is empty.': 'Este archivo está vacío.',
  'This file is longer than a year of a bank’s lines.':
    'Este archivo es más largo que un año de movimientos bancarios.',
  'A file has a name.': 'Un archivo tiene nombre.',
  'An answer has 500 characters at most.': 'Una respuesta tiene como mucho 500 caracteres.',
  'Name the household of a payment, a deposit or a refund, and only of those.':
    'Indique el hogar de un pago, un anticipo o una devolución, y solo de esos.',
  'Name the buy of a deposit, and only of a deposit.':
    'Indique la compra de un anticipo, y solo de un anticipo.',
  'Name the supplier that was paid, and only then.': 'Indique el proveedor al que se pagó, y solo entonces.',
  'This file has no line of a statement in it.': 'Este archivo no contiene ningún movimiento.',
  'No line of a statement was found in this file.': 'No se encontró ningún movimiento en este archivo.',
  '{} rows can’t be read. Mend the columns, or leave those rows out.':
    '{} filas no se pueden leer. Corrija las columnas o deje fuera esas filas.',
  'Row {}: there is no day in the column of days{}': 'Fila {}: no hay fecha en la columna de fechas{}',
  'Row {}: there is no amount in the column of amounts{}':
    'Fila {}: no hay importe en la columna de importes{}',
  'Row {}: there is an amount that came in and one that went out{}':
    'Fila {}: hay un importe que entró y otro que salió{}',
  'Row {}: its day is still to come{}': 'Fila {}: su fecha aún no ha llegado{}',
  'No entry of the bank’s account that stands is this one.':
    'Este no es un asiento vigente de la cuenta del banco.',
  'The line says {}, the entry {}.': 'El movimiento dice {}; el asiento, {}.',
  'This line is open already.': 'Este movimiento ya está pendiente.',
  'This line was matched with an entry that was there before. Take that back in the book, if it is wrong.':
    'Este movimiento se casó con un asiento que ya existía. Anúlelo en los libros si está mal.',
  'This line came in, and that goes out.': 'Este movimiento es una entrada, y eso es una salida.',
  'This line went out, and that comes in.': 'Este movimiento es una salida, y eso es una entrada.',
  'Entry {} of {} has {} from this household already.': 'El asiento {} del {} ya tiene {} de este hogar.',
  'Entry {} of {} has {} from this household as the deposit on {} already.':
    'El asiento {} del {} ya tiene {} de este hogar como anticipo de {}.',
  'It came into the cash tin.': 'Entró en la caja.',
  'Another line of the bank is matched with it.': 'Otro movimiento del banco está casado con él.',
  'No line of the bank is matched with it yet: match this line with it if it is the same money.':
    'Ningún movimiento del banco está casado con él todavía: case este movimiento con él si es el mismo dinero.',
  'The deposit of this household on this buy is paid: {} is held.':
    'El anticipo de este hogar para esta compra está pagado: se guardan {}.',
  'Say why this is not a second receipt for the same thing.':
    'Diga por qué no es un segundo cobro por lo mismo.',
  'A bill is due on its own day or later.': 'Una factura vence el mismo día de su fecha o después.',
  'This day has passed. Choose today or a later one.': 'Ese día ya pasó. Elija hoy o uno posterior.',
  'A line of the bank is matched with this entry. Let the line go on the bank page; it can take the entry back, too.':
    'Un movimiento del banco está casado con este asiento. Suéltelo en la página del banco; allí también se puede anular el asiento.',
  'Count the tin again instead.': 'Cuente la caja otra vez.',
  'A tin can’t hold less than nothing.': 'Una caja no puede contener menos que nada.',
  'You are the first; name somebody else, or nobody.':
    'Usted es la primera persona; indique otra, o ninguna.',
  'Cash came in or went out while you counted: the book says {} {} now.':
    'Entró o salió efectivo mientras contaba: los libros dicen ahora {} {}.',
  'The count differs from the book. Say what you know of why.':
    'El recuento difiere de los libros. Diga lo que sepa del porqué.',
  'The notes and coins come to another total.': 'Los billetes y monedas suman otro total.',
  'This line of the bank has found its place already.': 'Este movimiento del banco ya encontró su sitio.',
  'Another line of the bank is matched with this entry already.':
    'Otro movimiento del banco ya está casado con este asiento.',
  'This may be a second receipt for the same thing. Say why it is not one.':
    'Esto puede ser un segundo cobro por lo mismo. Diga por qué no lo es.',
};
