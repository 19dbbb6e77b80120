import type { StageBoard } from '@archwright/contracts';
import type { Tone } from '../look/marks.js';
import { birthDate, dateAndTime, timeOfDay, zoneNote } from '../time/wording.js';
import { boardWords, stageWords } from '../words/chair.js';
import { toldWords } from '../words/told.js';

type Card = StageBoard['cards'][number];

export interface LineMark {
  key: string;
  x: number;
  y: number;
  kind: Card['line'][number]['kind'];
  state: Card['line'][number]['state'];
}

export interface BoardCard {
  stageId: string;
  caseId: string;
  visitState: string | null;
  time: string;
  zoneNote: string | null;
  patientName: string;
  birth: string;
  caseNumber: string;
  title: string;
  verdict: string;
  tone: Tone;
  reason: string;
  marks: LineMark[];
  spoken: string;
}

const TONE: Record<Card['verdict'], Tone> = {
  'may-go-on': 'go',
  'check-first': 'caution',
  decide: 'stop',
  'not-ready': 'caution',
};

const CLINIC_Y = 14;
const LAB_Y = 40;
/** The drawing is laid out over this width and scaled by its view box. */
export const LINE_WIDTH = 420;

/** Evenly spaced: on the board the order matters, not the dates. */
function marks(line: Card['line']): LineMark[] {
  const gap = Math.min(52, (LINE_WIDTH - 32) / Math.max(1, line.length - 1));
  return line.map((entry, index) => ({
    key: `${String(index)} ${entry.label}`,
    x: 16 + index * gap,
    y: entry.kind === 'lab' ? LAB_Y : CLINIC_Y,
    kind: entry.kind,
    state: entry.state,
  }));
}

/** The day's cards by time. */
export function boardCards(board: StageBoard, viewer: string): BoardCard[] {
  return [...board.cards]
    .sort((a, b) => a.startsAt.localeCompare(b.startsAt))
    .map((card) => ({
      stageId: card.stageId,
      caseId: card.caseId,
      visitState: card.appointmentState === 'booked' ? null : stageWords.visit.state[card.appointmentState],
      time: timeOfDay(card.startsAt, card.zone),
      zoneNote: zoneNote(card.startsAt, card.zone, viewer),
      patientName: card.patientName,
      birth: birthDate(card.birthOn),
      caseNumber: card.caseNumber,
      title: card.title,
      verdict: boardWords.verdict[card.verdict],
      tone: TONE[card.verdict],
      reason: toldWords(card.told),
      marks: marks(card.line),
      spoken: boardWords.lineOf(
        card.line.map((entry) => `${entry.label} ${boardWords.lineState[entry.state]}`).join(', '),
      ),
    }));
}

export interface WaitingRow {
  kind: StageBoard['waiting'][number]['kind'];
  id: string;
  caseNumber: string;
  patientName: string;
  what: string;
  reason: string;
  deadline: string;
}

/** What waits for a decision, in the server's order: the most urgent first. */
export const waitingRows = (board: StageBoard, today: string): WaitingRow[] =>
  board.waiting.map(({ kind, id, caseNumber, patientName, reason, decideBy, zone }) => ({
    kind,
    id,
    caseNumber,
    patientName,
    what: boardWords.waiting[kind],
    reason,
    deadline: decideBy ? boardWords.decideBy(dateAndTime(decideBy, zone, today)) : boardWords.noDeadline,
  }));
