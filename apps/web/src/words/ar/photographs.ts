import type { messages as english } from '../en/photographs.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  photographs: {
    title: 'الصور',
    none: 'لم تُحفظ صورة لهذه الزيارة.',
    permission:
      'بإذن المريض فقط ووفق القواعد المحلية للسجلات الصحية. تُصغّر الصورة ويُحذف ما سجلته الكاميرا عن الجهاز والوقت والمكان. يراها أطباء الحالة ولا يراها غيرهم.',
    picture: 'الصورة',
    caption: 'ماذا تُظهر',
    captionHint: 'مثل: الحافة العلوية من الأسفل؛ الابتسامة بالطقم التجريبي.',
    keep: 'احفظها مع الزيارة',
    kept: '{when}، {by}',
    pictureOf: 'صورة: {caption}',
    remove: 'إزالة: {caption}',
    reason: 'السبب؛ تُحذف الصورة نهائيًا ويبقى السبب في السجل',
    removeGo: 'أزل الصورة',
    removed: 'أُزيلت: {caption}. {when}، {by}: {reason}',
    unreadable: 'لا يمكن قراءة هذا الملف كصورة. المقبول: صورة بصيغة JPEG أو PNG أو WebP.',
    need: {
      picture: 'اختر صورة.',
      caption: 'اكتب ما تُظهره، حتى 200 حرف.',
      reason: 'اكتب سببًا، حتى 500 حرف.',
    },
  },
};
