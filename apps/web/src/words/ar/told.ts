import type { messages as english } from '../en/told.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  told: {
    'case-paused':
      'متوقفة مؤقتًا{because, select, none {.} other {: {because}}}{again, select, none {} other { يُنظر فيها مجددًا يوم {again}.}}',
    'case-transferred': 'سُلّمت إلى جهة أخرى{because, select, none {.} other {: {because}}}',
    'case-abandoned': 'تُركت{because, select, none {.} other {: {because}}}',
    'case-closed': 'أُغلقت. وتبقى زيارات المتابعة مستحقة.',
    'case-ended-by-death': 'توفي المريض. وأُوقف كل شيء.',
    'case-to-decide': 'يُنتظر قرار في «{title}»: {reason}',
    'case-held': 'الأوقات محجوزة مؤقتًا حتى {until}: أكّدها أو أعدها.',
    'case-under-way': 'جارٍ الآن: {title}.',
    'case-missed': 'فاتت: {title}، {when}. تحتاج إلى وقت جديد.',
    'case-next': 'التالي: {title}، {when}، {clinic}.{placement, select, none {} other { تسليم الطقم يوم {placement}.}}',
    'case-placed': 'سُلّم الطقم يوم {on}. المراجعات والمتابعات اللاحقة مستحقة وغير محجوزة.',
    'case-nothing-left': 'لم يبق شيء للحجز. المراجعات والمتابعات اللاحقة مستحقة وغير محجوزة.',
    'case-enquiry': 'استفسار: لم يُحجز شيء بعد. اطلب عروضًا لـ «{title}».',
    'case-not-booked': 'غير محجوز: «{title}» وما بعده. اطلب عروضًا.',
    'day-empty': 'لا زيارات في هذا اليوم.',
    day: '{visits, plural, zero {لا زيارات} one {زيارة واحدة} two {زيارتان} few {# زيارات} many {# زيارة} other {# زيارة}}{parts, select, none {} other {: {parts}}}.',
    'day-arrived': '{n} في الانتظار',
    'day-in-progress': '{n} جارية',
    'day-completed': '{n} منتهية',
    'day-missed': '{n} فائتة',
    'day-not-firm': '{n} غير مؤكدة بعد',
    'board-may-go-on': '{n} يمكن متابعتها',
    'board-check-first': '{n} تحتاج إلى تحقق أولًا',
    'board-decide': '{n} تنتظر قرارًا',
    'board-not-ready': '{n} غير جاهزة',
    load: '{late, plural, =0 {لا شيء مهدد بالتأخر} zero {لا شيء مهدد بالتأخر} one {حالة واحدة مهددة بالتأخر} two {حالتان مهددتان بالتأخر} few {# حالات مهددة بالتأخر} many {# حالة مهددة بالتأخر} other {# حالة مهددة بالتأخر}}؛ {over, select, none {لا محطة عمل تتجاوز وقتها المفتوح} other {تتجاوز وقتها المفتوح: {over}}}{more, plural, =0 {} other {، و# غيرها}}.',
    'load-over': '{name} يوم {on}',
    'dispatch-empty': 'لا عمل في هذا اليوم.',
    'dispatch-finished': 'انتهى كل شيء.',
    dispatch:
      '{steps, plural, zero {لا خطوات} one {خطوة واحدة} two {خطوتان} few {# خطوات} many {# خطوة} other {# خطوة}} للعمل، منها {waiting} تنتظر و{late} متأخرة.',
    'dispatch-order':
      'الأقل هامشًا أولًا: الوقت بين النهاية المتوقعة للعمل ومغادرته إلى العيادة. وعند تساوي الهامش يُقدَّم الأبكر موعدًا في الخطة. وما ينتظر جوابًا يأتي آخر غير المنجز: فساعته متوقفة.',
    'calls-none': 'لا مكالمات لإجرائها.',
    calls:
      '{calls, plural, zero {لا مكالمات} one {مكالمة واحدة} two {مكالمتان} few {# مكالمات} many {# مكالمة} other {# مكالمة}} لإجرائها، {overdue} مستحقة الآن.',
  },
};
