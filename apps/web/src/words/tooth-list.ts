/** Words of the screen on which a practice keeps its own shades, moulds and arrangements. */
export const toothListWords = {
  title: 'Teeth of the practice',
  link: 'Teeth',
  sentence: 'Offered where teeth are chosen; anything else may be typed there all the same.',
  loading: 'the list of teeth',
  lists: { shades: 'Shades', moulds: 'Moulds', arrangements: 'Arrangements' },
  hint: 'One on each line, in the order in which they are offered.',
  wrong: 'Up to 100 lines of 60 characters each.',
  save: 'Save the lists',
  saved: 'Saved.',
};
