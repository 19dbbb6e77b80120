import type { messages as english } from '../en/itinerary.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  itinerary: {
    title: 'زيارات {patient}',
    sentence:
      '{n, plural, zero {لا زيارات قادمة} one {زيارة واحدة قادمة} two {زيارتان قادمتان} few {# زيارات قادمة} many {# زيارة قادمة} other {# زيارة قادمة}}، الحالة {number}.',
    loading: 'الزيارات',
    back: 'العودة إلى الحالة',
    print: 'طباعة',
    calendar: 'ملف تقويم',
    send: { mail: 'أرسلها بالبريد مرة أخرى', call: 'ضعها في قائمة المكالمات' },
    sent: { mail: 'يخرج البريد خلال ثوانٍ.', call: 'صارت في قائمة المكالمات.' },
    none: 'لا زيارة قادمة. خطّط الحالة فتظهر زياراتها هنا.',
    provisional: 'غير مؤكدة بعد',
    columns: { when: 'متى', what: 'لماذا', where: 'أين' },
  },
};
