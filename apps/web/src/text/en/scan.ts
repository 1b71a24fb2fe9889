/** Reading the label of a container with the camera, or typing its code. */
export const en = {
  scan: 'Scan a label',
  stop: 'Close the camera',
  hold: 'Hold the square mark of a label in front of the camera.',
  camera: 'What the camera sees',
  needsHttps:
    'This browser gives the camera only to pages that come by HTTPS. Type the code, or ask whoever runs the server.',
  notAllowed: 'The camera was not allowed, or there is none. Type the code instead.',
  noCode: 'That mark is not the label of a container.',
  code: 'Code on the label',
  codeHint: 'Six signs and a check, such as Y9Z MSWE. A bag has fewer.',
  wrong: 'This is no code of ours: a sign was misread, or two were swapped. Look at the label again.',
  find: 'Find it',
  byLabel: 'Find it by its label',
};
