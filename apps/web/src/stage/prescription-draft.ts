import type { PrescriptionPreviewQuery, SignPrescription } from '@archwright/contracts';
import { typedMinute } from '../change-visit/change-visit-view.js';
import { stageWords as words } from '../words/chair.js';

export interface PrescriptionDraft {
  shade: string;
  mould: string;
  agent: string;
  /** Day and time of the disinfection, on the wall of the clinic. */
  day: string;
  time: string;
  note: string;
}

export const emptyPrescription = (today: string): PrescriptionDraft => ({
  shade: '',
  mould: '',
  agent: '',
  day: today,
  time: '',
  note: '',
});

/** @returns what to sign, null while something is missing, and what is wrong by field */
export function readPrescription(
  { shade, mould, agent, day, time, note }: PrescriptionDraft,
  zone: string,
): { body: SignPrescription | null; wrong: Partial<Record<keyof PrescriptionDraft, string>> } {
  const at = typedMinute(day, time, zone);
  const wrong = {
    ...(agent.trim() === '' ? { agent: words.agentMissing } : {}),
    ...(at === null ? { time: words.atMissing } : {}),
  };
  if (agent.trim() === '' || at === null) return { body: null, wrong };
  return { body: { ...writtenOn({ shade, mould, note }), disinfection: { agent: agent.trim(), at } }, wrong };
}

/** What the laboratory reads on it; what was left empty is left out. */
export function writtenOn({
  shade,
  mould,
  note,
}: Pick<PrescriptionDraft, 'shade' | 'mould' | 'note'>): PrescriptionPreviewQuery {
  const told = Object.entries({ shade: shade.trim(), mould: mould.trim(), note: note.trim() });
  return Object.fromEntries(told.filter(([, text]) => text !== ''));
}
