import type { messages as english } from '../en/line.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  line: {
    levels: { clinic: 'العيادة', lab: 'المختبر' },
    asList: 'الشيء نفسه كقائمة',
    captionVisit: 'الزيارات وخطوات المختبر بترتيب الوقت',
    when: 'متى',
    what: 'ماذا',
    where: 'أين',
    legend: {
      visit: 'زيارة',
      step: 'خطوة في المختبر',
      courier: 'الساعي',
      wish: 'خلاف رغبة',
      person: 'يحتاج إلى شخص',
      done: 'تم',
      now: 'الآن',
      held: 'محجوز مؤقتًا أو مبدئي',
    },
    visitWhere: '{clinic}، {place}، {clinician}',
    stepWhat: '{title}، {arches}',
    stepWhere: '{laboratory}، {place}',
    against: '{wish}: {wishes}',
    atHome: 'في البيت',
    archBoth: 'الفكّان',
    arch: { upper: 'الفك العلوي', lower: 'الفك السفلي' },
    courier: { 'to-lab': 'الساعي إلى المختبر', 'to-clinic': 'الساعي إلى العيادة' },
  },
};
