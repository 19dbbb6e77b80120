import type { messages as english } from '../en/lab-orders.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  labOrders: {
    title: 'الطلبات إلى مختبرات أخرى',
    titleAtLab: 'الطلبات من العيادات',
    link: 'الطلبات إلى مختبرات أخرى',
    linkAtLab: 'الطلبات من العيادات',
    sentence:
      '{out, plural, =0 {لا طلب قيد التنفيذ} one {طلب واحد قيد التنفيذ} two {طلبان قيد التنفيذ} few {# طلبات قيد التنفيذ} many {# طلبًا قيد التنفيذ} other {# طلب قيد التنفيذ}}{care, plural, =0 {.} one {، وواحد يحتاج إلى شخص.} two {، واثنان يحتاجان إلى شخص.} few {، و# تحتاج إلى شخص.} many {، و# تحتاج إلى شخص.} other {، و# تحتاج إلى شخص.}}',
    loading: 'الطلبات',
    out: 'قيد التنفيذ',
    over: 'انتهت',
    none: 'لم يُرسل طلب بعد. يظهر هنا العمل المطلوب من مختبر مستقل مع جوابه وموعده.',
    noneAtLab: 'لم تطلب أي عيادة عملًا هنا بعد. يظهر الطلب هنا حالما ترسله عيادة.',
    more: 'أظهر الأقدم',
    states: {
      ordered: 'ينتظر جوابًا',
      accepted: 'مقبول',
      declined: 'مرفوض',
      withdrawn: 'مسحوب',
      finished: 'منتهٍ',
    },
    care: {
      unanswered: 'بلا جواب منذ أكثر من يوم',
      'needed-past': 'حان موعده وهو بلا جواب',
      'promised-late': 'وُعد به بعد موعد الحاجة',
      overdue: 'مضى اليوم الموعود ولم ينتهِ',
    },
    work: '{stage}: {steps}، {arches}',
    to: 'إلى {laboratory}',
    from: 'من {practice}، {clinic}',
    sent: 'أُرسل {when}',
    needed: 'مطلوب {when}',
    promised: 'موعود {when}',
    declined: 'رُفض: {reason}',
    about: 'الطلب {number}',
    contents: 'القيم والأشياء',
    noObjects: 'لا تُنقل أشياء؛ فالعمل يُرسل ملفات.',
    done: 'سُجّل: {what}، الطلب {number}.',
    choices: {
      accept: { label: 'اقبل كما هو مطلوب', then: 'تقرأ العيادة أن العمل سيعود {needed}.' },
      'accept-other': {
        label: 'اقبل ليوم آخر',
        then: 'تقرأ العيادة اليوم. فإن كان بعد موعد الحاجة أُبلغت بذلك وأعادت التخطيط.',
      },
      promise: { label: 'يوم آخر', then: 'تقرأ العيادة اليوم الجديد بدل اليوم الموعود.' },
      finish: { label: 'انتهى', then: 'تقرأ العيادة أن العمل انتهى.' },
      decline: { label: 'ارفض', then: 'يعود العمل إلى العيادة مع السبب الذي تذكره.' },
      withdraw: {
        label: 'اسحب',
        then: 'يقرأ المختبر أن الطلب سُحب؛ ويبقى العمل هنا في انتظار تخطيط جديد.',
      },
    },
    day: 'يعود إلى العيادة يوم، حتى {time}',
    dayMissing: 'اختر يومًا لم يأتِ بعد.',
  },
};
