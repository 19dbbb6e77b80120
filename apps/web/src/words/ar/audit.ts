import type { messages as english } from '../en/audit.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  audit: {
    title: 'من فعل ماذا',
    link: 'سجل الأعمال',
    sentence:
      '{isAll, select, yes {{shown, plural, zero {لا بنود} one {بند واحد} two {بندان} few {# بنود} many {# بندًا} other {# بند}}، والأحدث أولًا.} other {أحدث البنود: {shown, plural, zero {لا بنود} one {بند واحد} two {بندان} few {# بنود} many {# بندًا} other {# بند}}؛ وهناك غيرها.}}',
    loading: 'سجل الأعمال',
    none: 'لا بند يوافق البحث. ابحث بكلمات أقل أو في أيام أكثر.',
    fields: {
      by: 'من',
      deed: 'العمل أو بدايته',
      case: 'رقم الحالة',
      from: 'من يوم',
      until: 'إلى يوم',
    },
    anybody: 'أي شخص',
    service: 'الخدمة',
    find: 'ابحث',
    more: 'أظهر بنودًا أقدم',
    need: {
      deed: 'اكتب كلمات بأحرف لاتينية صغيرة تصل بينها شرطات، مثل visit-moved.',
      case: 'اكتب رقم حالة مثل 27-0012.',
      until: 'اختر اليوم الأول أو يومًا بعده.',
    },
    columns: { at: 'متى', by: 'من', deed: 'العمل', about: 'بشأن', details: 'التفاصيل' },
    about: '{name}، {kind}',
  },
};
