import type { ClaimWords } from '../en/claim.ts';

export const es: ClaimWords = {
  claim: 'Reclamación',
  title: (supplier, money) => `Se reclamaron ${money} a ${supplier}.`,
  claimed: 'Reclamado',
  granted: 'Concedido',
  open: 'Aún abierto',
  outcome: 'Respuesta',
  outcomes: { open: 'abierta', credited: 'concedida', refused: 'rechazada', 'written-off': 'abandonada' },
  history: 'Lo que pasó con ella',
  letter: 'Carta impresa',
  entries: 'Los asientos que hay detrás',
  all: 'Todas las reclamaciones',
  giveUp: 'Abandonar la reclamación',
  giveUpSentence: (money) =>
    `Asienta ${money}: haber 1200 Reclamaciones a proveedores; debe la cuenta puente de la compra, o 5000 Pérdidas si ya está cerrada.`,
  answered: 'Reclamaciones con respuesta',
  noneAnswered: 'Ninguna reclamación tiene respuesta todavía.',
  asCsv: 'Reclamaciones con respuesta como CSV',
  openIt: 'Su historia',
};
