/** Work in the background and letters, in Spanish. */
export const ES_WORK: Readonly<Record<string, string>> = {
  'The server stopped in the middle of it each time.': 'El servidor se detuvo a la mitad cada vez.',
  'This server does not know this work: it may be older than the book.':
    'Este servidor no conoce este trabajo: puede ser más antiguo que el libro.',
  'Something went wrong in the server. Its log says more.':
    'Algo falló en el servidor. Su registro dice más.',
  'The mail server did not let us in: the name or password in SMTP_URL is wrong.':
    'El servidor de correo no nos dejó entrar: el nombre o la contraseña de SMTP_URL no es correcto.',
  'The mail server refused the letter for good: “{}”.':
    'El servidor de correo rechazó la carta para siempre: «{}».',
  'The mail server refused the letter for now: “{}”.':
    'El servidor de correo rechazó la carta por ahora: «{}».',
  'This e-mail address can’t be written to.': 'No se puede escribir a esta dirección de correo.',
  'The mail server took too long to answer.': 'El servidor de correo tardó demasiado en responder.',
  'The mail server could not be reached.': 'No se pudo llegar al servidor de correo.',
  'The letter is not there any more.': 'La carta ya no está.',
  'This person has no login, and so no address.': 'Esta persona no tiene acceso, así que no tiene dirección.',
  'E-mail is off: whoever runs the server gives it SMTP_URL and MAIL_FROM to turn it on.':
    'El correo está apagado: quien lleva el servidor lo enciende con SMTP_URL y MAIL_FROM.',
  'E-mail is on: letters come from {}.': 'El correo está encendido: las cartas vienen de {}.',
  'E-mail is off on this server.': 'El correo está apagado en este servidor.',
  'The letter may be on its way already; it is looked at again.':
    'La carta puede estar ya en camino; se vuelve a mirar.',
};
