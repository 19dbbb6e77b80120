import type { messages as english } from '../en/import.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  import: {
    title: 'استيراد الملفات',
    link: 'الاستيراد',
    sentence: 'يُجرَّب الملف أولًا: يُعرض ما سيحدث، ولا يُكتب شيء قبل أن تطلب ذلك.',
    patients: 'مرضى من جدول',
    patientsHint:
      'ملف CSV بفاصلة أو فاصلة منقوطة أو علامة جدولة؛ السطر الأول يسمّي الأعمدة: الاسم الأول، اسم العائلة، تاريخ الميلاد، وغيرها. المرجع يحدد هوية كل مريض؛ ومن دونه الاسم وتاريخ الميلاد.',
    calendar: 'أوقات مشغولة من تقويم',
    calendarHint: 'ملف iCalendar (.ics) لكرسي أو شخص أو طقم أدوات. الزيارات المحجوزة تبقى في مكانها.',
    file: 'الملف: {about}',
    needFile: 'اختر ملفًا لا يزيد على 5 MB.',
    needResource: 'اختر صاحب التقويم.',
    needSource: 'اكتب اسمًا لا يزيد على 500 حرف؛ وأي ملف لاحق بالاسم نفسه يحل محل هذا.',
    zone: 'المنطقة الزمنية للأسطر التي لا تذكرها',
    dateOrder: 'ترتيب تاريخ مثل 3/4/1951',
    dateOrders: { ymd: 'السنة، الشهر، اليوم', dmy: 'اليوم، الشهر، السنة', mdy: 'الشهر، اليوم، السنة' },
    encoding: 'محفوظ بترميز',
    encodings: { 'utf-8': 'UTF-8 أو UTF-16', 'windows-1252': 'Windows-1252 (جداول قديمة)' },
    isUpdating: 'غيّر المرضى الموجودين من قبل، فيما يذكره الملف',
    isStrict: 'لا تكتب شيئًا إذا رُفض أي سطر',
    resource: 'تقويم مَن',
    choose: 'اختر',
    source: 'اسم هذا التقويم',
    try: 'جرّب',
    take: 'استورد',
    tried: 'تجربة فقط، لم يُكتب شيء.',
    refused: 'رُفضت أسطر، فلم يُكتب شيء.',
    done: 'تمت الكتابة.',
    patientCounts:
      '{rows, plural, zero {لا أسطر} one {سطر واحد} two {سطران} few {# أسطر} many {# سطرًا} other {# سطر}}: الجديد {added}، المغيَّر {updated}، الموجود من قبل {unchanged}، المرفوض {rejected}.',
    ignored: 'أعمدة لم يُستعمل منها شيء: {columns}.',
    rejectedTitle: 'الأسطر المرفوضة',
    rejectedColumns: { line: 'السطر', reason: 'السبب، وما الذي يُقبل' },
    more: 'بقية الأسطر المرفوضة، وعددها {n}، في ملف الأسطر المرفوضة.',
    download: 'احفظ الأسطر المرفوضة مع أسبابها',
    rejectsName: 'rejected-rows.csv',
    calendarCounts:
      '{busy, plural, zero {لا أوقات مشغولة} one {وقت مشغول واحد} two {وقتان مشغولان} few {# أوقات مشغولة} many {# وقتًا مشغولًا} other {# وقت مشغول}}، المعروف منها {unchanged}؛ والزائل {gone}. {conflicts, plural, zero {لا يقع شيء منها} one {يقع واحد منها} two {يقع اثنان منها} few {تقع # منها} many {يقع # منها} other {يقع # منها}} على وقت محجوز نهائيًا أو مؤقتًا.',
    toBeRepaired:
      '{n, plural, zero {لا يقع شيء من الجديد} one {يقع وقت جديد واحد} two {يقع وقتان جديدان} few {تقع # أوقات جديدة} many {يقع # وقتًا جديدًا} other {يقع # وقت جديد}} على زيارات قادمة: سيُبحث عن معالجات بعد الحفظ.',
    beingRepaired:
      '{n, plural, zero {لا يقع شيء من الجديد} one {يقع وقت جديد واحد} two {يقع وقتان جديدان} few {تقع # أوقات جديدة} many {يقع # وقتًا جديدًا} other {يقع # وقت جديد}} على زيارات قادمة: يجري البحث عن معالجات.',
    seeRepairs: 'اعرض ما يتعطّل',
    bookedTitle: 'الأوقات المحجوزة التي يقع عليها',
    bookedColumns: { from: 'من', until: 'إلى' },
    problemsTitle: 'تُرك لأنه تعذّرت قراءته',
    problemColumns: { line: 'السطر', component: 'البند', problem: 'السبب' },
  },
};
