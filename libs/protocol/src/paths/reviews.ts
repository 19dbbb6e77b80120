import type { PathLag, PathVisit } from '../path-schema.js';
import { chair, hard, lag, may, needEach, tick, typical, visit } from './notation.js';

interface AfterCare {
  readonly visits: PathVisit[];
  readonly lags: PathLag[];
}

/**
 * Reviews after placement: R1 at 24–72 h (a preferred window; a recorded phone check counts), R2 at 5–10 days; R3, R4 and the
 * recall get due dates and are not booked with the chain.
 *
 * @param deliveryVisit the visit that places the denture
 */
export function reviewsAfter(deliveryVisit: string): AfterCare {
  return {
    visits: [firstCheck(), secondCheck(), ...dueLater()],
    lags: [
      lag('placement-to-first-check', 'First check after placement', [deliveryVisit, 'R1'], {
        min: typical(1440, 'minutes'),
        max: typical(4320, 'minutes'),
      }),
      ...laterLags(deliveryVisit),
    ],
  };
}

/** Reviews of an immediate denture: the clinician removes it first after 18–36 h, a hard window. */
export function immediateReviewsAfter(deliveryVisit: string): AfterCare {
  const first: PathVisit = {
    ...firstCheck(),
    title: 'First check: the clinician removes the immediate denture',
    chairMinutes: chair(20, 30, 30),
    checklist: [
      tick('denture-stayed-in', 'Denture stayed in until now'),
      tick('bleeding-checked', 'Sockets looked at for bleeding'),
    ],
    cautions: ['two-identifiers', 'extraction-and-anticoagulants'],
  };
  return {
    visits: [first, secondCheck(), ...dueLater()],
    lags: [
      lag('placement-to-first-check', 'First check of an immediate denture', [deliveryVisit, 'R1'], {
        min: hard(1080, 'minutes'),
        max: hard(2160, 'minutes'),
      }),
      ...laterLags(deliveryVisit),
    ],
  };
}

function firstCheck(): PathVisit {
  return visit({
    code: 'R1',
    title: 'First check: sore spots',
    milestone: 'review',
    joins: 'first-check',
    chairMinutes: chair(15, 20, 30),
    assistant: false,
    captures: [needEach('sore-spots')],
    checklist: [tick('two-week-counter', 'Each ulcer has its first-seen date')],
    cautions: ['two-identifiers', 'persistent-sore'],
    isReview: true,
  });
}

function secondCheck(): PathVisit {
  return { ...firstCheck(), code: 'R2', title: 'Second check: sore spots and occlusion', joins: 'second-check' };
}

function dueLater(): PathVisit[] {
  const later = { assistant: false, isReview: true, chained: false, cautions: ['two-identifiers', 'persistent-sore'] };
  return [
    visit({
      ...later,
      code: 'R3',
      title: 'Third check: sore spots and occlusion',
      milestone: 'review',
      joins: 'third-check',
      chairMinutes: chair(15, 20, 30),
      captures: [needEach('sore-spots')],
    }),
    visit({
      ...later,
      code: 'R4',
      title: 'Outcome review',
      milestone: 'review',
      joins: 'outcome-review',
      chairMinutes: chair(20, 30, 40),
      captures: [needEach('kapur-retention'), needEach('kapur-stability'), may('oral-health-impact')],
    }),
    visit({
      ...later,
      code: 'RN',
      title: 'Recall',
      milestone: 'recall',
      joins: 'recall',
      chairMinutes: chair(20, 30, 30),
      captures: [needEach('sore-spots')],
    }),
  ];
}

function laterLags(delivery: string): PathLag[] {
  const between = (code: string, title: string, to: string, min: number, max: number) =>
    lag(code, title, [delivery, to], { min: typical(min, 'calendar-days'), max: typical(max, 'calendar-days') });
  return [
    between('placement-to-second-check', 'Second check', 'R2', 5, 10),
    between('placement-to-third-check', 'Third check', 'R3', 14, 28),
    between('placement-to-outcome-review', 'Outcome review', 'R4', 60, 92),
    lag('placement-to-recall', 'Recall every 12 months', [delivery, 'RN'], { min: typical(365, 'calendar-days') }),
  ];
}
