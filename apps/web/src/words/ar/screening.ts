import type { messages as english } from '../en/screening.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  screening: {
    title: 'يلفت النظر',
    note: 'للنظر لا للحكم: لا شيء ينتظره، وقد تكون القيمة غير المعتادة صحيحة.',
    atStage: 'بجانب قيم أخرى',
    kind: { value: 'قيمة واحدة', drift: 'مستوى تغيّر', share: 'حالات أُعيدت' },
    found: '{kind} · وُجد {when}',
    foundForYou: '{kind} · وُجد {when} · يظهر لك وحدك',
    onlyYou: 'يظهر لك وحدك',
    seen: 'اطّلعت',
    markSeen: 'علّم أنك اطّلعت: {about}',
    openCase: '{number} · {patient}',
  },
};
