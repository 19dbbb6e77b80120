import type { Words } from './words.js';

/** Arabic counts in six forms (Unicode CLDR plural rules). */
function appointments(count: number, form: Intl.LDMLPluralRule): string {
  if (form === 'one') return 'موعد واحد';
  if (form === 'two') return 'موعدان';
  return form === 'few' ? `${String(count)} مواعيد` : `${String(count)} موعدًا`;
}

export const arabic: Words = {
  intlLocale: 'ar-u-nu-latn',
  calendarTitle: 'موعد',
  subject: {
    reminder: (when) => `تذكير بموعدك يوم ${when}`,
    itinerary: 'مواعيدك',
    moved: 'تم تغيير موعدك',
    cancelled: 'تم إلغاء موعدك',
    colleagues: {
      decision: (caseNumber) => `${caseNumber}: مطلوب قرار`,
      pause: (caseNumber) => `${caseNumber}: يرجى التوقف`,
      settled: (caseNumber) => `${caseNumber}: تغيّرت الخطة`,
      question: (caseNumber) => `${caseNumber}: سؤال من المختبر`,
      answer: (caseNumber) => `${caseNumber}: تمت الإجابة على سؤالك`,
      rejection: (caseNumber) => `${caseNumber}: تم رفض عمل`,
      lateness: (caseNumber) => `${caseNumber}: عمل سيتأخر`,
    },
  },
  hello: (givenName) => `مرحبًا ${givenName}،`,
  reminder: 'نذكّرك بموعدك:',
  itinerary: (count, form) => `لديك ${appointments(count, form)}:`,
  moved: 'أصبح لموعدك وقت جديد:',
  cancelled: 'لن يتم هذا الموعد:',
  before: (when) => `كان الموعد سابقًا: ${when}`,
  patientTime: (when) => `بتوقيت منطقتك: ${when}`,
  provisional: '(غير مؤكد بعد)',
  confirm: 'نعم، سأحضر:',
  askToMove: 'أرغب في وقت آخر:',
  details: 'التحضيرات ومعلومات أخرى:',
  call: (phone) => `أو اتصل بنا: ${phone}`,
  colleagues: {
    decision: 'هناك فحص في هذه الحالة يتطلب قرارك. النتيجة والأوقات الجديدة المقترحة موجودة في ملف الحالة.',
    pause: 'هناك فحص في هذه الحالة يتطلب قرارًا. يرجى عدم تجاوز الخطوة الحالية حتى يُتخذ القرار.',
    settled: 'تقرر كيف تستمر هذه الحالة. الأوقات الجديدة موجودة في ملف الحالة.',
    question: 'لدى المختبر سؤال حول هذه الحالة. العمل متوقف حتى تتم الإجابة عليه.',
    answer: 'أجابت العيادة على سؤالك حول هذه الحالة. يمكن متابعة العمل.',
    rejection: 'رفض المختبر عملًا في هذه الحالة، والسبب مذكور في ملفها. يرجى تحديد كيفية المتابعة.',
    lateness: 'يقول المختبر إن عملًا في هذه الحالة سيتأخر. في السجل من يتأثر بذلك والخطط التي تعالجه.',
  },
  nothingMoved: 'لم يُنقل أي موعد بعد.',
  open: 'فتح الحالة:',
};
