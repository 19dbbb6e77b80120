import type { messages as english } from '../en/paths.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  paths: {
    title: 'مسارات العلاج',
    link: 'مسارات العلاج',
    sentence:
      '{paths, plural, zero {لا مسارات} one {مسار واحد} two {مساران} few {# مسارات} many {# مسارًا} other {# مسار}} في {versions, plural, zero {# نسخة} one {نسخة واحدة} two {نسختين} few {# نسخ} many {# نسخة} other {# نسخة}}. الحالات المفتوحة تبقى على النسخة التي بدأت بها.',
    loading: 'مسارات العلاج',
    back: 'كل المسارات',
    columns: {
      title: 'المسار',
      version: 'النسخة',
      arches: 'الفكّان',
      visits: 'الزيارات',
      published: 'نُشر',
      cases: 'الحالات المفتوحة',
    },
    shipped: '{on}، مع البرنامج',
    by: '{on}، نشره {name}',
    withdrawn: 'مسحوب',
    latest: 'الأحدث',
    head: '{code}، النسخة {version}',
    headWith: '{code}، النسخة {version}. {summary}',
    edit: 'غيّره أو انسخه',
    withdraw: 'لا تعرضه على الحالات الجديدة',
    offerAgain: 'اعرضه على الحالات الجديدة من جديد',
    picture: 'المسار في صورة',
    pictureOf:
      '{title}: {visits, plural, zero {لا زيارات} one {زيارة واحدة} two {زيارتان} few {# زيارات} many {# زيارة} other {# زيارة}}، وبينها {phases, plural, zero {لا مراحل} one {مرحلة واحدة} two {مرحلتان} few {# مراحل} many {# مرحلة} other {# مرحلة}} من عمل المختبر. والجدول أدناه يقول الشيء نفسه.',
    order: 'المسار في جدول',
    orderColumns: {
      part: 'الجزء',
      what: 'ماذا',
      minutes: 'الدقائق',
      after: 'بعد',
      waits: 'الانتظار',
      guards: 'يحتاج قبله',
    },
    kinds: { visit: 'زيارة', step: 'مختبر' },
    visitOf: 'زيارة: {title}',
    stepOf: 'مختبر: {title}',
    minutes: 'من {min} إلى {max}، وعادةً {typical}',
    turnaround: 'يعود بعد {usualMin} إلى {usualMax} من أيام عمل المختبر، و{rush} عند الاستعجال ({before})',
    waitOf: {
      least: '{from}: {least} على الأقل',
      most: '{from}: {most} على الأكثر',
      both: '{from}: {least} على الأقل، {most} على الأكثر',
    },
    spans: {
      'calendar-days': '{n, plural, zero {# يوم} one {يوم واحد} two {يومان} few {# أيام} many {# يومًا} other {# يوم}}',
      'lab-working-days':
        '{n, plural, zero {# يوم عمل في المختبر} one {يوم عمل واحد في المختبر} two {يوما عمل في المختبر} few {# أيام عمل في المختبر} many {# يوم عمل في المختبر} other {# يوم عمل في المختبر}}',
    },
    compare: 'قارن مع',
    noCompare: 'لا نسخة أخرى',
    differences:
      '{n, plural, zero {لا اختلاف.} one {اختلاف واحد} two {اختلافان} few {# اختلافات} many {# اختلافًا} other {# اختلاف}}',
    differenceColumns: { at: 'أين', kind: 'ماذا', before: 'قبل', after: 'بعد' },
    differenceKinds: {
      added: 'أُضيف',
      removed: 'أُزيل',
      changed: 'غُيّر',
      moved: 'رُتّب ترتيبًا آخر',
    },
    editTitle: 'تغيير: {title}',
    editSentence: 'لا يتغير شيء للحالات المفتوحة. ما تكتبه يبقى هنا إلى أن يُنشر أو يُترك.',
    faults:
      '{n, plural, zero {المسار سليم ويمكن نشره.} one {خطأ واحد يجب إصلاحه قبل النشر:} two {خطآن يجب إصلاحهما قبل النشر:} few {# أخطاء يجب إصلاحها قبل النشر:} many {# خطأ يجب إصلاحها قبل النشر:} other {# خطأ يجب إصلاحها قبل النشر:}}',
    meansTitle: 'ما ليس لدى العيادة',
    means: {
      skill: 'لا أحد لديه المهارة «{code}».',
      kit: 'لا فرع لديه طقم الأدوات «{code}».',
      centre: 'لا مختبر لديه قسم العمل «{code}».',
    },
    publish: 'انشر بوصفه النسخة {version}',
    giveUp: 'اترك ما كتبتُه',
  },
};
