import type { en } from '../en/scan.ts';

export const es: typeof en = {
  scan: 'Leer una etiqueta',
  stop: 'Cerrar la cámara',
  hold: 'Ponga la marca cuadrada de una etiqueta delante de la cámara.',
  camera: 'Lo que ve la cámara',
  needsHttps:
    'Este navegador da la cámara solo a páginas que llegan por HTTPS. Escriba el código, o pregunte a quien lleva el servidor.',
  notAllowed: 'No se permitió la cámara, o no hay ninguna. Escriba el código.',
  noCode: 'Esa marca no es la etiqueta de un envase.',
  code: 'Código de la etiqueta',
  codeHint: 'Seis signos y uno de control, como Y9Z MSWE. Una bolsa tiene menos.',
  wrong: 'No es un código nuestro: un signo se leyó mal, o dos se cambiaron. Mire otra vez la etiqueta.',
  find: 'Buscarlo',
  byLabel: 'Buscarlo por su etiqueta',
};
