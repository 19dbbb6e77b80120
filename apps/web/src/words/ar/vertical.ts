import type { messages as english } from '../en/vertical.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  vertical: {
    title: 'البعد العمودي: كل الطرق جنبًا إلى جنب',
    summary: 'لا طريقة تقرر وحدها. القيم هي المذكورة أعلاه، حُفظت أم لم تُحفظ.',
    columns: {
      method: 'الطريقة',
      value: 'القيمة',
      says: 'تقول',
      weakness: 'نقطة الضعف المعروفة',
      source: 'المصدر',
    },
    says: { lower: 'أنقصه', raise: 'زده', keep: 'أبقه', unclear: 'لا شيء' },
    bases: {
      stable: 'القواعد ثابتة: يُعتدّ بالتماس أثناء الكلام.',
      unstable: 'القواعد غير ثابتة: والقاعدة المتحركة تطقطق أيضًا. صحّح القاعدة أولًا.',
      'not-stated': 'سجّل ثبات القواعد أولًا: فالقاعدة المتحركة تطقطق أيضًا.',
    },
    notRecorded: 'لم يُسجّل',
    value: '{value, number} {unit, select, percent {%} other {{unit}}}',
    source: '{text} ({standing})',
    correction: '{direction, select, lower {أنقصه} other {زده}} من {least, number} إلى {most, number} mm: {methods}.',
    against: 'ما يعارض ذلك: {methods}.',
    step: '{turns, number} دورة {direction, select, clockwise {باتجاه عقارب الساعة} other {عكس عقارب الساعة}}: حتى {mm, number} mm عند الجلد إجمالًا. {next}',
    steps: 'ببرغي الارتكاز',
    overstated: 'الإبرة أقرب إلى المفصل من الذقن: فقد يُبلغ المطلوب قبل الدورة الأخيرة.',
    repeat: 'يُعاد بعد كل تغيير',
    prompt: 'يُقرأ بصوت عالٍ وبسرعة',
    language: 'اللغة',
    screw: 'برغي الارتكاز في {label}',
    screwMissing: 'اذكر خطوة البرغي واتجاهه من نشرة الصانع، فتُحسب الدورات.',
    screwKnown:
      '{pitch, number} mm في الدورة الواحدة، ويُرفع {direction, select, clockwise {باتجاه عقارب الساعة} other {عكس عقارب الساعة}}.',
    screwChange: 'صحّح',
    pitch: 'ارتفاع الدورة الواحدة، mm',
    pitchWanted: 'اكتب عددًا من 0.1 إلى 3 mm.',
    raisesBy: 'يُرفع بالتدوير، منظورًا إليه من رأسه',
    directions: { clockwise: 'باتجاه عقارب الساعة', 'counter-clockwise': 'عكس عقارب الساعة' },
    screwSave: 'احفظه مع طقم التسجيل',
  },
};
