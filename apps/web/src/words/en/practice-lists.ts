export const messages = {
  toothList: {
    title: 'Teeth of the practice',
    link: 'Teeth',
    sentence: 'Offered where teeth are chosen; anything else may be typed there all the same.',
    loading: 'the list of teeth',
    lists: { shades: 'Shades', moulds: 'Moulds', arrangements: 'Arrangements' },
    hint: 'One on each line, in the order in which they are offered.',
    wrong: 'Up to 100 lines of 60 characters each.',
    save: 'Save the lists',
    saved: 'Saved.',
  },
  checkFigures: {
    title: 'What became of the checks',
    link: 'Checks',
    sentence:
      '{n, plural, =0 {No failed check was set aside so far.} one {Failed checks of one rule were set aside. Often set aside is a question to the rule.} other {Failed checks of {n} rules were set aside. Often set aside is a question to the rule.}}',
    loading: 'the counts of the checks',
    perRule: 'Counted per rule, never per person.',
    columns: {
      rule: 'Rule',
      judged: 'Visits judged',
      failed: 'Failed at',
      setAside: 'Set aside in writing',
      wentOn: 'Went on after a late finding',
      dismissed: 'Alerts dismissed',
    },
  },
};
