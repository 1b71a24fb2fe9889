const s = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

export const en = {
  photos: 'Photos',
  addPhoto: 'Take a photo',
  addWords: 'It is made smaller on this phone, and where it was taken is left out.',
  photoNo: (number: number, count: number) => `Photo ${number} of ${count}`,
  waits: (count: number) =>
    `${s(count, 'photo waits', 'photos wait')} on this phone and ${count === 1 ? 'is' : 'are'} sent when there is a signal.`,
  notAPicture: 'This phone can’t read that file as a picture. Take the photo again.',
  refused: 'This photo was not taken:',
  sendAgain: 'Send again',
  dropIt: 'Leave it out',
  takeAway: 'Take this photo away',
  noPhotos: 'No photo yet.',
};
export type PhotoWords = typeof en;
