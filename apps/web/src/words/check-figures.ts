/** Words of the screen that counts what became of the checks. */
export const checkFigureWords = {
  title: 'What became of the checks',
  link: 'Checks',
  sentence: (rules: number) =>
    rules === 0
      ? 'No failed check was set aside so far.'
      : `Failed checks of ${String(rules)} of these rules were set aside. Often set aside is a question to the rule.`,
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
};
