import type { messages as english } from '../en/remake-log.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  remakeLog: {
    title: 'ما أُعيد صنعه',
    link: 'ما أُعيد صنعه',
    sentence:
      '{remakes, plural, =0 {لم يُعد صنع شيء} one {إعادة صنع واحدة} two {إعادتا صنع} few {# إعادات صنع} many {# إعادة صنع} other {# إعادة صنع}}{cases, plural, =0 {} one { في حالة واحدة} two { في حالتين} few { في # حالات} many { في # حالة} other { في # حالة}}، من {from} إلى {until}.',
    loading: 'ما أُعيد صنعه',
    from: 'اليوم الأول',
    until: 'اليوم الأخير',
    show: 'أظهر',
    periodWrong: 'أدخل يومين، اللاحق ثانيًا، لا يفصل بينهما أكثر من 366 يومًا.',
    note: 'تُعدّ إعادات الصنع التي قبلتها العيادة، ولا تُعدّ حسب الأشخاص أبدًا: فمن يدقق يجد أكثر.',
    byCause: 'حسب السبب',
    byOrigin: 'حسب المنشأ',
    originNote: 'المنشأ: الزيارة أو خطوة المختبر التي أُعيد كل شيء ابتداءً منها.',
    columns: {
      name: 'السبب',
      origin: 'المنشأ',
      remakes: 'إعادات الصنع',
      byCheck: 'كشفها فحص',
      cases: 'الحالات',
    },
    pictureOf: '{title}: {list}. والجدول أدناه يقول الشيء نفسه.',
    bar: '{name} {remakes}',
    showThese:
      '{name}: أظهر {remakes, plural, one {إعادة صنع واحدة} two {إعادتي صنع} few {# إعادات صنع} many {# إعادة صنع} other {# إعادة صنع}}',
    listTitle: 'واحدة واحدة',
    listOf: 'واحدة واحدة: {what}',
    both: '{cause}؛ {origin}',
    showAll: 'أظهر الكل',
    none: 'لم يُعد صنع شيء في هذه المدة. تظهر إعادة الصنع هنا حين تقبلها العيادة.',
    more: 'أظهر المزيد',
    entry: '{origin}، {arches}',
    found: 'كُشف عند «{stage}»',
    foundBy: { check: 'بفحص', person: 'بملاحظة شخص' },
    back: 'عودة إلى «{origin}»',
    discarded: 'المستبعد: {what}',
    accepted: 'قُبلت {when}',
    alert: 'انظر إلى التنبيه',
    alertOf: 'انظر إلى تنبيه {number}',
  },
};
