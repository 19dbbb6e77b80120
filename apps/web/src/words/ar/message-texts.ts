import type { messages as english } from '../en/message-texts.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  messageTexts: {
    title: 'رسائل المرضى',
    link: 'الرسائل',
    sentence: 'ما يُرسل ومتى، بكلماتك حيث تكتبها. والرسالة التي تنتظر تخرج بالكلمات السارية حينها.',
    loading: 'الرسائل',
    which: 'الرسالة واللغة',
    textOf: '{message}، {language}{isOwn, select, yes { (خاصة)} other {}}',
    elsewhere: 'يلزم تصحيحه أيضًا: {texts}.',
    subject: 'الموضوع',
    text: 'النص',
    caution: 'لا كلمة عما يُعمل في الزيارة: فقد يرى الرسالة آخرون. وتسري القواعد المحلية للتذكير.',
    places: 'تُملأ المواضع بين القوسين المعقوفين عند الإرسال:',
    needed: '{says} (لازم)',
    sample: 'ما يصل إلى المريض',
    sampleHint: 'كما هو محفوظ الآن، إلى مريض مختلق.',
    save: 'احفظ الرسائل',
    saved: 'حُفظ.',
    delivered: 'خذ النص الأصلي',
    messages: {
      reminder: 'تذكير',
      itinerary: 'زيارات محجوزة',
      moved: 'زيارة نُقلت',
      cancelled: 'زيارة أُلغيت',
    },
    languages: {
      en: 'الإنجليزية',
      de: 'الألمانية',
      ar: 'العربية',
    },
    says: {
      name: 'اسم المريض الأول',
      visit: 'يوم الزيارة ووقتها وعنوانها',
      visits: 'يوم كل زيارة ووقتها وعنوانها',
      count: 'عدد الزيارات في جملة',
      before: 'اليوم والوقت السابقان',
      confirm: 'رابط التأكيد',
      move: 'رابط طلب وقت آخر',
      details: 'رابط ما يجب تحضيره',
      phone: 'هاتف العيادة',
    },
    need: {
      subject: 'اكتب من 3 إلى 120 حرفًا في سطر واحد.',
      text: 'اكتب من 20 إلى 3000 حرف.',
      unknown: 'لا يوجد هنا الموضع {places}.',
      missing: 'ضع {places} في النص.',
      brace: 'تأتي الأقواس المعقوفة أزواجًا حول اسم الموضع.',
    },
  },
};
