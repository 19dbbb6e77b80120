import type { messages as english } from '../en/photographs.js';
import type { SameTexts } from '../messages.js';

export const messages: SameTexts<typeof english> = {
  photographs: {
    title: 'Fotos',
    none: 'Von diesem Termin wurde kein Foto aufbewahrt.',
    permission:
      'Nur mit Einwilligung der Patientin oder des Patienten und nach den örtlichen Regeln für Behandlungsunterlagen. Das Foto wird verkleinert; was die Kamera zu Gerät, Zeit und Ort vermerkt hat, fällt weg. Die Behandelnden des Falls sehen es, sonst niemand.',
    picture: 'Foto',
    caption: 'Was es zeigt',
    captionHint: 'Etwa: Oberkieferkamm von unten; Lachen mit der Einprobe.',
    keep: 'Beim Termin aufbewahren',
    kept: '{when}, {by}',
    pictureOf: 'Foto: {caption}',
    remove: 'Entfernen: {caption}',
    reason: 'Grund; das Bild ist endgültig gelöscht, der Grund bleibt in der Akte',
    removeGo: 'Foto entfernen',
    removed: 'Entfernt: {caption}. {when}, {by}: {reason}',
    unreadable: 'Diese Datei lässt sich nicht als Bild lesen. Angenommen wird ein Foto als JPEG, PNG oder WebP.',
    need: {
      picture: 'Wählen Sie ein Foto.',
      caption: 'Geben Sie in bis zu 200 Zeichen an, was es zeigt.',
      reason: 'Geben Sie einen Grund in bis zu 500 Zeichen an.',
    },
  },
};
