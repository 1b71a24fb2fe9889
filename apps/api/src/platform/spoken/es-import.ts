/** Sheets brought over from a spreadsheet, in Spanish. */
export const ES_IMPORT: Readonly<Record<string, string>> = {
  'The bytes of a file are sent as base64.': 'Los bytes de un archivo se envían como base64.',
  'A file has 1.5 MB at most.': 'Un archivo tiene como mucho 1,5 MB.',
  'Choose at least one file.': 'Elija al menos un archivo.',
  'Twelve files at a time at most.': 'Como mucho doce archivos a la vez.',
  'Send what the dry run gave as “seen”.': 'Envíe lo que la prueba dio como “seen”.',
  'This row has more cells than there are headings: a separator stands inside a cell.':
    'Esta fila tiene más celdas que encabezados: hay un separador dentro de una celda.',
  'A whole number from {} to {} goes here.': 'Aquí va un número entero de {} a {}.',
  'One of these goes here: {}.': 'Aquí va uno de estos: {}.',
  'This is no number.': 'Esto no es un número.',
  'This may be a thousand or a decimal. Choose how numbers are written in these files.':
    'Puede ser un millar o un decimal. Elija cómo se escriben los números en estos archivos.',
  'This can’t be below nothing.': 'No puede ser menor que cero.',
  'This is nothing.': 'Esto es cero.',
  'This is finer than the currency’s smallest coin.': 'Es más fino que la moneda más pequeña.',
  'This is larger than the book can hold.': 'Es mayor de lo que cabe en el libro.',
  'The book is kept in one currency, and this is another.':
    'El libro se lleva en una moneda, y esta es otra.',
  'Write the mass with g, kg, oz or lb.': 'Escriba la masa con g, kg, oz o lb.',
  'Write the unit with the figure, such as 15 kg or 33 lb.':
    'Escriba la unidad con la cifra, como 15 kg o 33 lb.',
  'Write a day, a month or a year: 2024-03-01, 2024-03 or 2024.':
    'Escriba un día, un mes o un año: 2024-03-01, 2024-03 o 2024.',
  'There is no such day.': 'Ese día no existe.',
  'Write the year with four figures.': 'Escriba el año con cuatro cifras.',
  'Either figure may be the month. Choose how days are written in these files.':
    'Cualquiera de las cifras puede ser el mes. Elija cómo se escriben los días en estos archivos.',
  'This day is still to come.': 'Ese día aún no ha llegado.',
  'Row {} has the same name. Give each its own.': 'La fila {} tiene el mismo nombre. Dé a cada una el suyo.',
  'A telephone number has 5 to 20 digits; + ( ) - . / and blanks may part them.':
    'Un número de teléfono tiene de 5 a 20 cifras; se pueden separar con + ( ) - . / y espacios.',
  'Names like “Seat 7” are what households that left are called. Choose another.':
    'Nombres como “Seat 7” son los de los hogares que se fueron. Elija otro.',
  'No household has this name or seat, here or in the sheets sent along.':
    'Ningún hogar tiene este nombre o puesto, ni aquí ni en las hojas enviadas.',
  'No food has this name or code, here or in the sheets sent along.':
    'Ningún alimento tiene este nombre o código, ni aquí ni en las hojas enviadas.',
  'This food was taken off the lists. Put it back first.':
    'Este alimento se retiró de las listas. Devuélvalo primero.',
  'No kind of container has this name or code.': 'Ningún tipo de envase tiene este nombre o código.',
  'No household, bank, cash tin or supplier has this name. For a new supplier write “supplier” as its kind.':
    'Ningún hogar, banco, caja ni proveedor tiene este nombre. Para un proveedor nuevo escriba “proveedor” como tipo.',
  'Fill exactly one of the columns of amounts.': 'Rellene exactamente una de las columnas de importes.',
  'A bank or a tin holds money; a household or a supplier owes or is owed. Use the other column.':
    'Un banco o una caja guarda dinero; un hogar o un proveedor debe o tiene a favor. Use la otra columna.',
  'A different opening balance stands in the book already: {}. Mend that entry instead.':
    'Ya hay otro saldo inicial en el libro: {}. Corrija ese asiento.',
  '{} holds {} g of this at the most.': '{} contiene como mucho {} g de esto.',
  'This is no text. Save each sheet of a workbook as CSV of its own.':
    'Esto no es texto. Guarde cada hoja del libro de cálculo como un CSV aparte.',
  'A byte here stands for no letter: {}. Choose how letters are saved in these files, or type the cell again.':
    'Un byte de aquí no representa ninguna letra: {}. Elija cómo se guardan las letras en estos archivos o escriba la celda de nuevo.',
  'A letter was lost here when the file was saved. Type the cell again.':
    'Aquí se perdió una letra al guardar el archivo. Escriba la celda de nuevo.',
  'Nobody can tell from its headings what this sheet is about. Say what it is.':
    'Por sus encabezados no se sabe de qué trata esta hoja. Diga qué es.',
  'A quotation mark in or before line {} of this file is not closed, or stands inside a word.':
    'Unas comillas en la línea {} o antes no se cierran, o están dentro de una palabra.',
  'Nothing is known of a column “{}”. Rename it, or say that it is left out.':
    'No se conoce ninguna columna “{}”. Cámbiele el nombre o diga que se deja fuera.',
  'Two columns tell the same as “{}”. Leave one of them out.':
    'Dos columnas dicen lo mismo que “{}”. Deje fuera una de ellas.',
  'A column “{}” (or “{}”) is needed.': 'Hace falta una columna “{}” (o “{}”).',
  'There is no row under the headings.': 'No hay ninguna fila bajo los encabezados.',
  'A sheet brings {} rows at a time at most; this has {}.':
    'Una hoja trae como mucho {} filas a la vez; esta tiene {}.',
  'Something in these sheets is in the way, so nothing was brought over. Try them again to see it.':
    'Algo en estas hojas lo impide, así que no se trajo nada. Pruébelas otra vez para verlo.',
  'This very file was brought over as import {} on {}. Take it out.':
    'Este mismo archivo se trajo como importación {} el {}. Quítelo.',
  'This file was chosen twice. Take one of them out.': 'Este archivo se eligió dos veces. Quite uno.',
  'Bringing over {} needs the duty of {}.': 'Traer {} requiere el cargo de {}.',
  'Something leans on what this import made, so it can’t be taken back.':
    'Algo se apoya en lo que trajo esta importación, así que no se puede anular.',
  'Something leans on this import: {}. Take that back first, or mend single rows by hand.':
    'Algo se apoya en esta importación: {}. Anule eso primero, o corrija filas sueltas a mano.',
  'Money or grams that this import brought were spent since.':
    'Dinero o gramos que trajo esta importación se gastaron después.',
  'This import was taken back already.': 'Esta importación ya se anuló.',
  'These sheets can’t be brought over as they are.': 'Estas hojas no se pueden traer tal como están.',
  'The sheets or the book changed since they were tried. Try them again and look at what they do now.':
    'Las hojas o el libro cambiaron desde la prueba. Pruébelas otra vez y mire lo que hacen ahora.',
};
