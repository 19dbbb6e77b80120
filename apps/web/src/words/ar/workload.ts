import type { messages as english } from '../en/workload.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  workload: {
    title: 'خطط أفضل لهذا العمل',
    loading: 'البحث',
    none: 'لم يبحث أحد عن خطط أفضل بعد. البحث وحده لا يغيّر شيئًا.',
    look: 'ابحث عن خطط أفضل',
    lookAgain: 'ابحث مرة أخرى',
    cancel: 'ألغِ البحث',
    cancelled: 'أُلغي البحث.',
    lateTitle: 'متأخر حسب الخطة الحالية',
    effectTitle: 'ما الذي سيتغير',
    figure: 'الرقم',
    now: 'الآن',
    then: 'إن قُبلت',
    lateCases: 'الحالات المتأخرة',
    lateMinutes: 'دقائق التأخر، مجتمعةً',
    fullDays: 'الأيام فوق 85 % في قسم عمل',
    daysTitle: 'عبء الأيام التي تتغير',
    daysTitleOf: 'عبء الأيام التي تتغير: {title}',
    centre: 'قسم العمل',
    day: 'الدقائق الآن {before}، وإن قُبلت {after}، والمتاح {open}',
    dayOf: '{centre}، {day}: {change}',
    fromTo: '{from} ← {to}',
    where: '{laboratory}، {centre}',
    moves:
      '{moves, plural, zero {لا خطوات لنقلها} one {خطوة واحدة لنقلها} two {خطوتان لنقلهما} few {# خطوات لنقلها} many {# خطوة لنقلها} other {# خطوة لنقلها}}',
    overtimeTitle: 'عمل إضافي يحتاج إلى موافقة',
    overtime: '{centre}، {day}: {minutes} د',
    accept: 'اقبل وانقل العمل',
    acceptOf: 'اقبل وانقل العمل: {title}',
    accepted: 'نُقل العمل. ولم تُنقل أي زيارة.',
    state: { accepted: 'مقبولة', superseded: 'لم تعد مفتوحة' },
    stale: 'تغيّر العمل منذ العثور على هذه الخطة، ولم يُنقل شيء. ابحث مرة أخرى.',
  },
};
