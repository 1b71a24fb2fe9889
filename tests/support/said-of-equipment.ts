/** What letters about equipment that is kept or handed on say, of a thing named Rye that was due on 20 September at 18:00. */
export const SAID_OF_EQUIPMENT = {
  'equipment-asked': {
    en: [
      'Handed straight on? Rye',
      'A neighbour asks to take this straight from you, so that nobody brings it back between: Rye. Their time: Sunday, 20 September 2026 at 18:00. Say yes or no; before you hand it on, it is cleaned and its parts are counted.',
    ],
    es: [
      '¿Pasarlo directamente? Rye',
      'Un vecino pide recogerlo directamente de usted, sin que nadie lo devuelva entre medias: Rye. Su hora: domingo, 20 de septiembre de 2026, 18:00. Diga sí o no; antes de pasarlo se limpia y se cuentan sus piezas.',
    ],
  },
  'relay-asked': {
    en: [
      'To be handed straight on: Rye',
      'Two borrowers mean to hand this straight on, and no answer is in yet: Rye. You can say no until Sunday, 20 September 2026 at 18:00.',
    ],
    es: [
      'Para pasar directamente: Rye',
      'Dos hogares quieren pasárselo directamente y aún falta la respuesta: Rye. Puede decir que no hasta: domingo, 20 de septiembre de 2026, 18:00.',
    ],
  },
  'late-return': {
    en: [
      'Not back yet: Rye',
      'This is not back: Rye. It was due Sunday, 20 September 2026 at 18:00. Ask when it comes, and tell who is next. This is overdue.',
    ],
    es: [
      'Aún no ha vuelto: Rye',
      'Esto no ha vuelto: Rye. Vencía: domingo, 20 de septiembre de 2026, 18:00. Pregunte cuándo llega y avise a quien sigue. El plazo ya pasó.',
    ],
  },
  'service-due': {
    en: [
      'Service: Rye',
      'This wants its service by its uses: Rye. Pull the plug and keep hands clear of jaws and rollers while it is open; the maker’s manual goes first. Write down what was done. This is overdue.',
    ],
    es: [
      'Revisión: Rye',
      'Le toca su revisión por sus usos: Rye. Desenchúfelo y aparte las manos de mordazas y rodillos mientras esté abierto; el manual del fabricante va primero. Anote qué se hizo. El plazo ya pasó.',
    ],
  },
  'unfit-equipment': {
    en: [
      'Not fit to lend: Rye',
      'This is dirty, broken or lacks a part that it needs: Rye. See to it before it goes out again.',
    ],
    es: [
      'No se puede prestar: Rye',
      'Está sucio, roto o le falta una pieza necesaria: Rye. Arréglelo antes de que salga otra vez.',
    ],
  },
} as const;
