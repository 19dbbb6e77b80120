/** Words of the page behind a link in a message. */
interface ReplyWords {
  readonly intlLocale: string;
  readonly direction: 'ltr' | 'rtl';
  readonly title: string;
  readonly confirm: string;
  readonly askToMove: string;
  readonly confirmed: string;
  readonly asked: string;
  readonly gone: string;
}

const english: ReplyWords = {
  intlLocale: 'en-GB',
  direction: 'ltr',
  title: 'Your appointment',
  confirm: 'Yes, I am coming',
  askToMove: 'I would like another time',
  confirmed: 'Thank you. We expect you.',
  asked: 'Thank you. We will call you to find another time; until then this appointment stands.',
  gone: 'This link opens no appointment that still stands. Look at the latest message, or call the practice.',
};

const german: ReplyWords = {
  intlLocale: 'de-DE',
  direction: 'ltr',
  title: 'Ihr Termin',
  confirm: 'Ja, ich komme',
  askToMove: 'Ich möchte einen anderen Termin',
  confirmed: 'Danke. Wir erwarten Sie.',
  asked: 'Danke. Wir rufen Sie an, um einen anderen Termin zu finden; bis dahin gilt dieser.',
  gone: 'Zu diesem Link gibt es keinen gültigen Termin mehr. Sehen Sie in die neueste Nachricht oder rufen Sie die Praxis an.',
};

const arabic: ReplyWords = {
  intlLocale: 'ar',
  direction: 'rtl',
  title: 'موعدك',
  confirm: 'نعم، سأحضر',
  askToMove: 'أرغب في موعد آخر',
  confirmed: 'شكرًا لك. نحن بانتظارك.',
  asked: 'شكرًا لك. سنتصل بك لإيجاد موعد آخر، وحتى ذلك الحين يبقى هذا الموعد قائمًا.',
  gone: 'لا يفتح هذا الرابط موعدًا قائمًا. راجع أحدث رسالة أو اتصل بالعيادة.',
};

/** English for every language that the messages don't speak either. */
export function replyWordsOf(locale: string): ReplyWords {
  const [primary] = locale.toLowerCase().split(/[-_]/);
  return primary === 'de' ? german : primary === 'ar' ? arabic : english;
}
