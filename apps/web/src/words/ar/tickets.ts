import type { messages as english } from '../en/tickets.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  tickets: {
    title: 'بطاقات العمل',
    sentence:
      '{chosen, plural, =0 {لم تُختر أي بطاقة.} one {بطاقة واحدة، A6.} two {بطاقتان، كل منهما ورقة A6.} few {# بطاقات، كل منها ورقة A6.} many {# بطاقة، كل منها ورقة A6.} other {# بطاقة، كل منها ورقة A6.}} مسح الرمز يفتح العمل؛ ولا يُذكر اسم أي مريض.',
    loading: 'الأعمال',
    link: 'بطاقات العمل',
    linkOf: 'بطاقة العمل: {job}',
    linkShort: 'بطاقة',
    print: 'اطبع',
    backToBench: 'إلى عبء العمل والأعمال',
    backToCase: 'إلى الحالة',
    choose: 'اطبع: {job}',
    all: 'اختر الكل',
    allButNone: 'لا تختر شيئًا',
    job: '{number}، {step}',
    step: '{title}، {arches}',
    bench: 'مكان العمل',
    begins: 'البداية',
    handsOn: 'العمل الفعلي',
    minutes: '{minutes} د',
    due: 'يُعاد حتى',
    notBooked: 'الزيارة غير محجوزة',
    avoid: 'لا تستخدم',
    code: 'رمز يفتح {job}',
    scan: 'امسح الرمز لفتح هذا العمل',
    printed: 'طُبعت {when}',
    none: 'لم يبق هنا عمل، فلا بطاقة للطباعة.',
    onlyHere:
      'هذه الصفحة مفتوحة على {address}، ولا يفتح هذا العنوان إلا هذا الحاسوب. افتحها بعنوانها في الشبكة قبل الطباعة، وإلا فلن يفتح أي هاتف هذه الرموز.',
  },
  job: {
    title: '{number} · {step}',
    loading: 'العمل',
    sentence: 'عمل واحد كما تسميه بطاقته.',
    gone: 'لم يعد هذا العمل مخططًا في مختبرك: نُقل أو أُعيد أو بدأ من جديد. ابحث عن حالته بالرقم المكتوب على البطاقة.',
    find: 'ابحث عن الحالة',
    wholeCase: 'الحالة كلها',
    toBench: 'إلى عبء العمل والأعمال',
  },
};
