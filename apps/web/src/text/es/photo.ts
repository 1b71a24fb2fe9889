import type { PhotoWords } from '../en/photo.ts';

const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const es: PhotoWords = {
  photos: 'Fotos',
  addPhoto: 'Tomar una foto',
  addWords: 'Se reduce en este teléfono, y se omite dónde fue tomada.',
  photoNo: (number, count) => `Foto ${number} de ${count}`,
  waits: (count) =>
    `${s(count, 'foto espera', 'fotos esperan')} en este teléfono y se ${count === 1 ? 'envía' : 'envían'} cuando haya señal.`,
  notAPicture: 'Este teléfono no puede leer ese archivo como imagen. Tome la foto otra vez.',
  refused: 'Esta foto no se aceptó:',
  sendAgain: 'Enviar otra vez',
  dropIt: 'Dejarla fuera',
  takeAway: 'Quitar esta foto',
  noPhotos: 'Aún no hay fotos.',
};
