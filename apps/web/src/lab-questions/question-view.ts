import type { LabQuestionView, OpenLabQuestions } from '@archwright/contracts';
import { birthDate, dateAndTime } from '../time/wording.js';
import { questionWords as words } from '../words/bench.js';
import { archWords } from '../words/line.js';

/** A question and, once it is there, its answer: who, when, what. */
export interface QuestionLines {
  isOpen: boolean;
  asked: string;
  question: string;
  /** What happens while it is open, or who answered when. */
  then: string;
  answer: string | null;
}

export function questionLines(given: LabQuestionView, zone: string, today: string): QuestionLines {
  const at = (instant: string): string => dateAndTime(instant, zone, today);
  const { question, askedAt, askedBy, escalatesAt, answer, answeredAt, answeredBy } = given;
  return {
    isOpen: answeredAt === null,
    asked: words.asked(askedBy, at(askedAt)),
    question,
    then: answeredAt === null ? words.stopped(at(escalatesAt)) : words.answered(answeredBy ?? '', at(answeredAt)),
    answer,
  };
}

export interface OpenQuestion {
  id: string;
  caseId: string;
  /** Two identifiers: who it is about, and the case. */
  patient: string;
  caseNumber: string;
  about: string;
  asked: string;
  question: string;
  isOverdue: boolean;
}

/** What waits for an answer, the longest waiting first, as the server lists it. */
export const openQuestions = (list: OpenLabQuestions, nowMs: number, today: string): OpenQuestion[] =>
  list.items.map((item) => ({
    id: item.id,
    caseId: item.caseId,
    patient: words.patient(item.patientName, birthDate(item.birthOn)),
    caseNumber: item.caseNumber,
    about: words.about(item.laboratoryName, item.step, archWords(item.arches)),
    asked: words.asked(item.askedBy, dateAndTime(item.askedAt, item.zone, today)),
    question: item.question,
    isOverdue: Date.parse(item.escalatesAt) <= nowMs,
  }));
