import type { messages as english } from '../en/lots.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  lot: {
    title: 'من يلبس هذه التشغيلة؟',
    start: 'اكتب رقم التشغيلة كما هو على العبوة. تُسرد كل حالة دخلت فيها، مع من ينبغي الاتصال به.',
    found:
      '{n, plural, =0 {لا حالة مسجلة للتشغيلة «{lot}».} one {دخلت التشغيلة «{lot}» في حالة واحدة.} two {دخلت التشغيلة «{lot}» في حالتين.} few {دخلت التشغيلة «{lot}» في # حالات.} many {دخلت التشغيلة «{lot}» في # حالة.} other {دخلت التشغيلة «{lot}» في # حالة.}}',
    of: '{material}، {arches}',
    recorded: '{when}، {by}',
    first: 'لا تُعدّ وتُعرض إلا أول {n} من البنود.',
    link: 'ابحث عن تشغيلة مادة',
    lot: 'التشغيلة',
    material: 'المادة، إن استعمل الرقمَ أكثر من مصنّع',
    find: 'ابحث',
    need: 'اكتب تشغيلة لا تزيد على 60 حرفًا.',
    none: 'لا شيء مسجل بهذا الرقم. قارنه بالعبوة؛ فالتهجئة مهمة، وحالة الأحرف غير مهمة.',
    columns: {
      who: 'المريض',
      phone: 'الهاتف',
      case: 'الحالة',
      what: 'المادة',
      expires: 'صالحة حتى',
      recorded: 'سُجلت',
    },
    noExpiry: 'غير مطبوع',
  },
};
