import type { messages as english } from '../en/line.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  line: {
    levels: { clinic: 'Praxis', lab: 'Labor' },
    asList: 'Dasselbe als Liste',
    captionVisit: 'Termine und Laborschritte in zeitlicher Folge',
    when: 'Wann',
    what: 'Was',
    where: 'Wo',
    legend: {
      visit: 'Termin',
      step: 'Laborschritt',
      courier: 'Kurier',
      wish: 'gegen einen Wunsch',
      person: 'braucht jemanden',
      done: 'erledigt',
      now: 'jetzt',
      held: 'vorgemerkt oder vorläufig',
    },
    visitWhere: '{clinic}, {place}, {clinician}',
    stepWhat: '{title}, {arches}',
    stepWhere: '{laboratory}, {place}',
    against: '{wish}: {wishes}',
    atHome: 'zu Hause',
    archBoth: 'beide Kiefer',
    arch: { upper: 'Oberkiefer', lower: 'Unterkiefer' },
    courier: { 'to-lab': 'Kurier zum Labor', 'to-clinic': 'Kurier zur Praxis' },
  },
};
