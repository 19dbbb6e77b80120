import type { messages as english } from '../en/figures.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  figures: {
    title: 'كيف تسير العيادة',
    link: 'المؤشرات',
    sentence:
      '{outside, plural, zero {لا شيء لافت} one {نقطة واحدة لافتة} two {نقطتان لافتتان} few {# نقاط لافتة} many {# نقطة لافتة} other {# نقطة لافتة}} منذ {since}.',
    tooLittle: 'المتوفر حتى الآن أقل من أن يُحكم عليه.',
    loading: 'المؤشرات',
    titles: {
      'promise-kept': 'سُلِّم الطقم حتى اليوم الموعود أولًا',
      remake: 'أُعيد عمل شيء قبل تسليم الطقم',
      'missed-visit': 'زيارات فائتة',
      'lead-time': 'الأيام من فتح الحالة إلى تسليم الطقم',
      'visits-per-case': 'الزيارات حتى تسليم الطقم',
    },
    per: { 'promise-kept': 'حالات سُلِّم طقمها', remake: 'حالات سُلِّم طقمها', 'missed-visit': 'زيارات مستحقة' },
    noneTitle: 'لا شيء يُعدّ بعد',
    none: 'مع أول طقم يُسلَّم وأول زيارة تنقضي يظهر ما يلي: {titles}.',
    shareSentence:
      '{events} من {size} في {months, plural, zero {# شهر} one {شهر واحد} two {شهرين} few {# أشهر} many {# شهرًا} other {# شهر}}: {share}.',
    valueSentence: {
      days: '{average, number, ::.0 group-off} يوم في المتوسط، لـ{cases, plural, zero {# حالة} one {حالة واحدة} two {حالتين} few {# حالات} many {# حالة} other {# حالة}}.',
      visits:
        '{average, number, ::.0 group-off} زيارة في المتوسط، لـ{cases, plural, zero {# حالة} one {حالة واحدة} two {حالتين} few {# حالات} many {# حالة} other {# حالة}}.',
    },
    values: {
      days: '{n, plural, zero {# يوم} one {يوم واحد} two {يومان} few {# أيام} many {# يومًا} other {# يوم}}',
      visits:
        '{n, plural, zero {لا زيارات} one {زيارة واحدة} two {زيارتان} few {# زيارات} many {# زيارة} other {# زيارة}}',
    },
    percent: '{n} %',
    span: 'من {lower} إلى {upper}',
    pictureOf: '{title}. {sentence}',
    standing: {
      'too-few-months': 'تُرسم الحدود حين يبلغ عدد الأشهر {needed}.',
      'too-few-cases': 'تُرسم الحدود حين يبلغ عدد الحالات {needed}.',
      'no-spread': 'كل النقاط متساوية، فلا حدود تُرسم.',
      charted:
        '{outside, plural, zero {لا نقطة خارج ما تفسره المصادفة.} one {نقطة واحدة خارج ما تفسره المصادفة: ابحث عن السبب.} two {نقطتان خارج ما تفسره المصادفة: ابحث عن السبب.} few {# نقاط خارج ما تفسره المصادفة: ابحث عن السبب.} many {# نقطة خارج ما تفسره المصادفة: ابحث عن السبب.} other {# نقطة خارج ما تفسره المصادفة: ابحث عن السبب.}}',
    },
    outside: 'خارج الحدود',
    inside: 'داخل الحدود',
    table: 'الشيء نفسه في جدول',
    shareColumns: {
      month: 'الشهر',
      events: 'المعدود',
      size: 'من',
      share: 'النسبة',
      limits: 'الحدود',
      verdict: 'الحكم',
    },
    valueColumns: { case: 'الحالة', on: 'تاريخ التسليم', value: 'القيمة', verdict: 'الحكم' },
    use: {
      title: 'استخدام الكراسي والأطباء وأقسام العمل',
      sentence: 'الساعات المحجوزة من الساعات المتاحة، من {from} إلى {to}.',
      columns: { name: 'الاسم', place: 'أين', booked: 'المحجوز', open: 'المتاح', share: 'المستخدم' },
      kinds: { chair: 'الكراسي', clinician: 'الأطباء', 'work-centre': 'أقسام العمل' },
      hours: '{hours, number, ::.# group-off} س',
      closed: 'غير مفتوح',
    },
  },
};
