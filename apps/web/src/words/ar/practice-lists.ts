import type { messages as english } from '../en/practice-lists.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  toothList: {
    title: 'أسنان العيادة',
    link: 'الأسنان',
    sentence: 'تُعرض حيث تُختار الأسنان، ويمكن كتابة غيرها هناك أيضًا.',
    loading: 'قائمة الأسنان',
    lists: { shades: 'الألوان', moulds: 'الأشكال', arrangements: 'التنضيد' },
    hint: 'واحد في كل سطر، بالترتيب الذي تُعرض به.',
    wrong: 'حتى 100 سطر، في كل منها 60 حرفًا.',
    save: 'حفظ القوائم',
    saved: 'حُفظ.',
  },
  checkFigures: {
    title: 'ما آلت إليه الفحوص',
    link: 'الفحوص',
    sentence:
      '{n, plural, =0 {لم يُتجاوز أي فحص راسب حتى الآن.} one {تُجوزت فحوص راسبة لقاعدة واحدة. كثرة التجاوز سؤال عن القاعدة.} other {تُجوزت فحوص راسبة لعدد من القواعد: {n}. كثرة التجاوز سؤال عن القاعدة.}}',
    loading: 'أعداد الفحوص',
    perRule: 'العدّ لكل قاعدة، لا لكل شخص.',
    columns: {
      rule: 'القاعدة',
      judged: 'زيارات فُحصت',
      failed: 'رسبت',
      setAside: 'تُجوزت كتابةً',
      wentOn: 'استُؤنف بعد نتيجة متأخرة',
      dismissed: 'تنبيهات رُفضت',
    },
  },
};
