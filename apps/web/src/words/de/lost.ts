import type { messages as english } from '../en/lost.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  late: {
    action: 'Wird später',
    day: 'Fertig am',
    time: 'Fertig um',
    reason: 'Warum',
    planned:
      'Geplantes Ende: {when}. Dadurch verschiebt sich nichts: Der Empfang sieht, wen es trifft, und entscheidet.',
    problem:
      'Geben Sie Tag und Uhrzeit nach dem geplanten Ende und nach jetzt ein, und den Grund mit höchstens 500 Zeichen.',
    go: 'Der Praxis melden',
    said: 'Als fertig gemeldet für {when}; die Praxis entscheidet.',
    done: '{visits, plural, =0 {Die Praxis weiß es; bisher steht kein Termin im Weg: {step}.} one {Die Praxis weiß es; # Termin muss vielleicht verschoben werden: {step}.} other {Die Praxis weiß es; # Termine müssen vielleicht verschoben werden: {step}.}}',
  },
  lostVisit: {
    title: 'Ein Termin fällt aus: {title}',
    sentence: '{patient}, {when}, {state}.',
    loading: 'der Termin',
    link: 'Was damit ausfällt',
    linkOf: 'Was damit ausfällt: {patient}',
    back: 'Zum Fall',
    explain:
      'Ab wann der Patient wieder kommen kann, entscheidet über die späteren Termine und die Laborarbeit dazwischen. Nichts ändert sich, bis Sie einen Plan annehmen.',
    day: 'Kann wieder kommen ab',
    time: 'Um',
    reason: 'Warum',
    didNotCome: 'Der Patient ist nicht gekommen.',
    problem: 'Geben Sie Tag und Uhrzeit nach dem Termin und nach jetzt ein, auf fünf Minuten genau, und den Grund.',
    go: 'Zeigen, wen es trifft',
    over: 'Dieser Termin ist {state}; von ihm kann nichts ausfallen.',
  },
};
