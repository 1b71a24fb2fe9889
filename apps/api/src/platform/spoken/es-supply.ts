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
  'Containers, lids, liners and cartons say for which kind they are, others don’t.':
    'Los envases, tapas, forros y cajas dicen para qué clase son; los demás no.',
  'Absorbers say how much oxygen one takes up, others don’t.':
    'Los absorbentes dicen cuánto oxígeno toma uno; los demás no.',
  'This day was over when it came. Read the day on the pack again; what is past it is not kept.':
    'Ese día ya había pasado cuando llegó. Lea otra vez la fecha del paquete; lo que la pasó no se guarda.',
  'Nothing of this store is good for that long.': 'Nada de este almacén dura tanto.',
  'Say how many pieces came.': 'Diga cuántas piezas llegaron.',
  'Say what was bought.': 'Diga qué se compró.',
  'Say what was bought besides.': 'Diga qué más se compró.',
  'There is no such thing to lend.': 'No existe ese equipo.',
  'There is no such supply.': 'No existe ese material.',
  'The book has {} of {}; {} are said to be used. Write down what was bought, or count it.':
    'El libro tiene {} de {}; se dice que se usaron {}. Anote lo que se compró, o cuéntelo.',
  'Each supply and each thing stands on one line.': 'Cada material y cada equipo va en una sola línea.',
  'Sign the grams of this session first; then it can be settled.':
    'Firme primero los gramos de esta jornada; después se puede liquidar.',
  'Something was bought, counted or poured since this was shown. Look at what it would post now.':
    'Desde que se mostró, se compró, contó o envasó algo. Mire lo que se asentaría ahora.',
  '{} is settled. Look at what your containers cost.': '{} está liquidada. Mire lo que cuestan sus envases.',
  'Take the settlement back on the page of the session.':
    'Deshaga la liquidación en la página de la jornada.',
  'Settle the session again instead.': 'Liquide la jornada otra vez.',
};
