import type { messages as english } from '../en/course.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  course: {
    title: '{number} · مسار علاج {patient}',
    link: 'مسار الحالة',
    loading: 'مسار الحالة',
    plan: 'الخطة الأولى وما حدث',
    columns: { what: 'الزيارة أو العمل', first: 'خُطط له أولًا', then: 'حدث', later: 'التأخر' },
    whenAndState: '{when} ({state})',
    notPlanned: 'غير مخطط',
    notAtFirst: 'ليس في الخطة الأولى',
    later: '{n, plural, zero {# يوم} one {يوم واحد} two {يومان} few {# أيام} many {# يومًا} other {# يوم}}',
    earlier:
      '{n, plural, zero {قبل # يوم} one {قبل يوم واحد} two {قبل يومين} few {قبل # أيام} many {قبل # يومًا} other {قبل # يوم}}',
    onTheDay: 'في اليوم نفسه',
    measured: 'القياسات عبر الزيارات',
    measuredNote:
      'الأعداد هي وسيط قراءاتها أو محسوبة منها. والقيم المأخوذة بين علامات أخرى أو بطريقة أخرى في سطر خاص بها: لا تُقارن.',
    measurement: 'القياس',
    noneMeasured: 'لم يُقس شيء بعد.',
    column: '{day}: {title}',
    nameOf: '{name}، {place}',
    amount: '{value, number} {unit}',
    yes: 'نعم',
    no: 'لا',
    tracings: 'التسجيلات',
    noTracings: 'لم يُجر أي تسجيل.',
    noPhotographs: 'لم تُحفظ أي صورة.',
    typed: 'كُتبت نتائجه ولا رسم له.',
  },
};
