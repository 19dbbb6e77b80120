import type { messages as english } from '../en/practice.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  practice: {
    sentence: '{parts}.',
    clinics: '{n, plural, zero {لا فروع} one {فرع واحد} two {فرعان} few {# فروع} many {# فرعًا} other {# فرع}}',
    chairs: '{n, plural, zero {لا كراسي} one {كرسي واحد} two {كرسيان} few {# كراسي} many {# كرسيًا} other {# كرسي}}',
    clinicians: '{n, plural, zero {لا أطباء} one {طبيب واحد} two {طبيبان} few {# أطباء} many {# طبيبًا} other {# طبيب}}',
    laboratories:
      '{n, plural, zero {لا مختبرات} one {مختبر واحد} two {مختبران} few {# مختبرات} many {# مختبرًا} other {# مختبر}}',
    paths:
      '{n, plural, zero {لا مسارات علاج} one {مسار علاج واحد} two {مسارا علاج} few {# مسارات علاج} many {# مسار علاج} other {# مسار علاج}}',
    centre:
      '{name} ({places, plural, zero {لا أماكن} one {مكان واحد} two {مكانان} few {# أماكن} many {# مكانًا} other {# مكان}})',
    clinician: '{name}: {skills}',
    waiting:
      '{n, plural, =0 {لا شيء ينتظر} one {أمر واحد ينتظر} two {أمران ينتظران} few {# أمور تنتظر} many {# أمرًا ينتظر} other {# أمر ينتظر}} قرار شخص.',
    loading: 'ما ينتظر',
    places: 'شاشات العيادة',
    today: 'ما ينتظر',
    alertsTitle: 'بانتظار قرار',
    clinicsTitle: 'الفروع',
    laboratoriesTitle: 'المختبرات',
    pathsTitle: 'مسارات العلاج للحالات الجديدة',
    clinicColumns: { name: 'الفرع', zone: 'المنطقة الزمنية', chairs: 'الكراسي', clinicians: 'الأطباء وما يعملونه' },
    laboratoryColumns: { name: 'المختبر', zone: 'المنطقة الزمنية', workCentres: 'أقسام العمل' },
    pathColumns: { title: 'المسار', arches: 'الفكّان', visits: 'الزيارات مع المراجعات', version: 'النسخة' },
    seeDay: 'يوم {clinic}',
    seeLoad: 'العبء والعمل في {laboratory}',
  },
};
