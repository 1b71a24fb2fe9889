/** What an audit tests, and the figures that it gives, in Spanish. */
export const ES_AUDIT: Readonly<Record<string, string>> = {
  'Every entry has movements, and each movement has one positive amount and two sides in one unit':
    'Cada asiento tiene movimientos, y cada movimiento un importe positivo y dos lados en una unidad',
  'entries: {}, movements: {}, empty entries: {}, movements wrong: {}':
    'asientos: {}, movimientos: {}, asientos vacíos: {}, movimientos incorrectos: {}',
  'All accounts of a unit add up to zero after every entry':
    'Todas las cuentas de una unidad suman cero después de cada asiento',
  'entries: {}, entries that leave a unit out of balance: {}':
    'asientos: {}, asientos que dejan una unidad descuadrada: {}',
  'Running totals are what the movements add up to': 'Los totales son la suma de los movimientos',
  'accounts: {}, drifted: {}': 'cuentas: {}, desviadas: {}',
  'The running totals of each unit balance': 'Los totales de cada unidad cuadran',
  'units: {}, out of balance: {}': 'unidades: {}, descuadradas: {}',
  'Every account has the guard of its kind and keeps to it':
    'Cada cuenta tiene el límite de su clase y lo respeta',
  'accounts: {}, with another guard: {}, beyond their guard: {}':
    'cuentas: {}, con otro límite: {}, fuera de su límite: {}',
  'Clearing and deposits of every closed or called-off buy are zero':
    'La liquidación y los depósitos de cada compra cerrada o cancelada están a cero',
  'buys ended: {}, accounts not at zero: {}': 'compras terminadas: {}, cuentas que no están a cero: {}',
  'The shares of every cost line add up to it, each within one of its exact part':
    'Las partes de cada coste suman su total, cada una a menos de uno de su parte exacta',
  'cost lines: {}, wrong: {}': 'costes: {}, incorrectos: {}',
  'Every split awards nobody more than the claim, and all that there is to award':
    'Cada reparto no da a nadie más de lo que pide, y da todo lo que hay que dar',
  'splits: {}, wrong: {}': 'repartos: {}, incorrectos: {}',
  'Computing a frozen answer again from its frozen inputs gives the same bytes':
    'Calcular otra vez una respuesta con sus datos guardados da los mismos bytes',
  'answers computed again: {}, changed: {}': 'respuestas calculadas otra vez: {}, distintas: {}',
  'Every buy came to its stage by permitted moves alone':
    'Cada compra llegó a su etapa solo por pasos permitidos',
  'buys: {}, moves: {}, buys off the path: {}': 'compras: {}, pasos: {}, compras fuera del camino: {}',
  'Every pledge is in order, and its allotment is nothing or within it, in its steps and its price':
    'Cada promesa está en orden, y lo asignado es nada o cabe en ella, en sus pasos y su precio',
  'pledges: {}, wrong: {}': 'promesas: {}, incorrectas: {}',
  'Every fixed fill has the least key that can be had':
    'Cada reparto de sacos fijado es el mejor que puede haber',
  'fills: {}, not the best: {}': 'repartos de sacos: {}, que no son el mejor: {}',
  'Every gram of every lot has a holder, and no holder ever held less than nothing':
    'Cada gramo de cada lote tiene quien lo guarda, y nadie guardó nunca menos que nada',
  'lots: {}, grams from suppliers: {}, lots out of balance: {}, holders below zero: {}':
    'lotes: {}, gramos de proveedores: {}, lotes descuadrados: {}, por debajo de cero: {}',
  'Lineage runs in no circle, and every container reaches a delivery or an intake':
    'El origen no da vueltas, y cada envase llega a una entrega o una entrada',
  'lots: {}, containers: {}, lots in a circle or with an unknown parent: {}, containers without an origin: {}':
    'lotes: {}, envases: {}, lotes en círculo o de origen desconocido: {}, envases sin origen: {}',
  'No code is used twice, and no container holds more than its capacity and 8 %':
    'Ningún código se usa dos veces, y ningún envase contiene más que su capacidad y un 8 %',
  'codes: {}, containers: {}, codes repeated: {}, containers over capacity: {}':
    'códigos: {}, envases: {}, códigos repetidos: {}, envases por encima de su capacidad: {}',
  'Nothing on hold moved, and every release was signed by two logins':
    'Nada retenido se movió, y cada liberación la firmaron dos accesos',
  'holds: {}, movements during a hold: {}, releases without two logins: {}':
    'retenciones: {}, movimientos durante una retención: {}, liberaciones sin dos accesos: {}',
  'Every close that kept a digest still gives it from its entries':
    'Cada cierre que guardó un resumen lo da todavía con sus asientos',
  'digests: {}, no longer the same: {}': 'resúmenes: {}, que ya no son iguales: {}',
  'Every matched line of the bank is one standing entry of its own amount, and no entry is two lines':
    'Cada movimiento casado del banco es un asiento vigente de su importe, y ningún asiento son dos movimientos',
  'lines matched: {}, of another amount: {}, taken back: {}, matched twice: {}':
    'movimientos casados: {}, de otro importe: {}, anulados: {}, casados dos veces: {}',
  'Every count of the cash tin that differed from the book is booked to the cent':
    'Cada recuento de la caja que difería del libro está anotado al céntimo',
  'counts: {}, not booked as counted: {}': 'recuentos: {}, sin anotar como se contó: {}',
  'No two times that hold one piece overlap, and of no thing more are out than there are':
    'Nunca se reserva dos veces el mismo objeto a la vez, ni se presta más de lo que hay',
  'times held: {}, overlapping: {}, loans: {}, things with more out than there are: {}':
    'horas ocupadas: {}, solapadas: {}, préstamos: {}, cosas prestadas de más: {}',
  'Every loan came back after it went out, with no more parts than it had, and had every critical one':
    'Cada préstamo volvió después de salir, sin más piezas que las que llevaba, y llevaba todas las imprescindibles',
  'loans: {}, parts: {}, back before out: {}, parts of which more came back: {}, back uncounted: {}, without a critical part: {}':
    'préstamos: {}, piezas: {}, vueltos antes de salir: {}, piezas de las que volvieron más: {}, vueltos sin contar: {}, sin una pieza imprescindible: {}',
  'packing days ended: {}, accounts not at zero: {}':
    'jornadas de envasado terminadas: {}, cuentas que no están a cero: {}',
  'Clearing of every settled or called-off packing day is zero':
    'La liquidación de cada jornada de envasado liquidada o cancelada está a cero',
  'The deposit of every loan that came back is settled':
    'El depósito de cada préstamo que volvió está liquidado',
  'loans back: {}, deposits not settled: {}': 'préstamos vueltos: {}, depósitos sin liquidar: {}',
};
