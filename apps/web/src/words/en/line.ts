export const messages = {
  line: {
    levels: { clinic: 'clinic', lab: 'lab' },
    asList: 'The same as a list',
    captionVisit: 'Visits and laboratory steps in order of time',
    when: 'When',
    what: 'What',
    where: 'Where',
    legend: {
      visit: 'visit',
      step: 'laboratory step',
      courier: 'courier',
      wish: 'against a wish',
      person: 'needs a person',
      done: 'done',
      now: 'now',
      held: 'held or provisional',
    },
    atHome: 'at home',
    archBoth: 'both arches',
    arch: { upper: 'upper', lower: 'lower' },
    courier: { 'to-lab': 'Courier to the laboratory', 'to-clinic': 'Courier to the clinic' },
  },
};
