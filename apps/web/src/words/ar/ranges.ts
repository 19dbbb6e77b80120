import type { messages as english } from '../en/ranges.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  ranges: {
    title: 'النطاقات المعتادة والحدود',
    link: 'النطاقات',
    sentence:
      '{own, plural, zero {كل شيء كما ورد مع البرنامج} one {قيمة واحدة خاصة بكم} two {قيمتان خاصتان بكم} few {# قيم خاصة بكم} many {# قيمة خاصة بكم} other {# قيمة خاصة بكم}}. ما تغيّره يُعمل به ابتداءً من القياس التالي المحفوظ.',
    loading: 'النطاقات',
    usual: 'النطاقات المعتادة',
    limits: 'حدود الفحوص',
    columns: { name: 'القياس', shipped: 'كما ورد', least: 'الأدنى لديكم', most: 'الأعلى لديكم', source: 'المصدر' },
    limitColumns: { name: 'الحد', shipped: 'كما ورد', own: 'حدّكم', source: 'المصدر' },
    nameOf: '{name}، {group}',
    none: 'غير معروف',
    span: 'من {min, number} إلى {max, number} {unit}',
    value: '{value, number} {unit}',
    source: '{source} ({standing})',
    standings: {
      published: 'منشور',
      'common practice': 'ممارسة شائعة',
      'project default': 'قيمة افتراضية للبرنامج',
      memory: 'من الذاكرة',
    },
    fixed: 'لا يمكن تغييره',
    least: 'الأدنى: {name}',
    most: 'الأعلى: {name}',
    limit: 'حدّكم: {name}',
    needSpan: 'اكتب القيمتين معًا أو اتركهما: الأدنى أقل من الأعلى، من {min, number} إلى {max, number} {unit}.',
    needLimit: 'اكتب عددًا من {min, number} إلى {max, number} {unit}، أو لا شيء.',
    reason: 'سبب التغيير',
    needReason: 'اذكر السبب في 3 إلى 500 حرف؛ فهو يبقى في السجل.',
    save: 'احفظ النطاقات',
    saved: 'حُفظ.',
    history: 'ما غُيّر من قبل',
    historyColumns: { at: 'متى', by: 'من', why: 'لماذا' },
  },
};
