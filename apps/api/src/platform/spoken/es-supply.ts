/** Supplies, and what a packing day costs, in Spanish. */
export const ES_SUPPLY: Readonly<Record<string, string>> = {
  'There is a supply called {} already.': 'Ya hay un material llamado {}.',
  '{} is kept for this already. Change it, or put it away first.':
    'Para esto ya se guarda {}. Cámbielo, o retírelo antes.',
  '{} of {} are on hand still. Use them up or count them first.':
    'Aún hay {} de {}. Úselos o cuéntelos primero.',
  'Each supply stands on one line.': 'Cada material va en una sola línea.',
  'The treasurer pays from the bank and the tin. Say which household paid in the shop.':
    'Del banco y de la caja paga la tesorería. Diga qué hogar pagó en la tienda.',
  'Something was bought or used since it was counted. Count it again.':
    'Desde que se contó se ha comprado o usado algo. Cuéntelo otra vez.',
  'The count agrees with the book; nothing is to be booked.':
    'El recuento coincide con el libro; no hay nada que asentar.',
  'A pack holds at least one piece.': 'Un paquete tiene al menos una pieza.',
  'Containers, lids and liners say for which kind they are, others don’t.':
    'Los envases, tapas y forros dicen para qué clase son; los demás no.',
  'Absorbers say how much oxygen one takes up, others don’t.':
    'Los absorbentes dicen cuánto oxígeno toma uno; los demás no.',
  'Say how many pieces came.': 'Diga cuántas piezas llegaron.',
  'Say what was bought.': 'Diga qué se compró.',
};
