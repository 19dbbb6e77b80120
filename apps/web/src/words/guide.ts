import type { Role } from '@archwright/contracts';
import { messages as english } from './en/guide.js';
import { filled, inLanguage } from './messages.js';

const said = await inLanguage(english, { de: () => import('./de/guide.js'), ar: () => import('./ar/guide.js') });
const { desk, bench, chair, practice } = said;

/** One step of a first task: on which pages it is done, and what to do there. */
export interface GuideStep {
  /** The address at which the step before is done and this one begins. */
  at: RegExp;
  text: string;
}

const CASE = /^\/desk\/cases\/[^/]+$/;

const PRACTICE: readonly GuideStep[] = [
  { at: /^\/practice$/, text: practice.waiting },
  { at: /^\/desk$/, text: practice.day },
  { at: CASE, text: practice.ofCase },
];

/** A first task for each role of the demonstration: small enough for a few minutes, and whole. */
export const guideSteps: Record<Role, readonly GuideStep[]> = {
  'front-desk': [
    { at: /^\/desk$/, text: desk.call },
    { at: /^\/find$/, text: desk.openCase },
    { at: /^\/desk\/cases\/new$/, text: desk.choosePath },
    { at: /^\/desk\/cases\/[^/]+\/offers$/, text: desk.offers },
    { at: CASE, text: desk.booked },
  ],
  lab: [
    { at: /^\/bench$/, text: bench.work },
    { at: /^\/bench\/cases\/[^/]+$/, text: bench.ofCase },
    { at: /^\/bench\/parcels$/, text: bench.parcels },
  ],
  clinician: [
    { at: /^\/chair$/, text: chair.board },
    { at: /^\/chair\/stages\/[^/]+$/, text: chair.stage },
    { at: CASE, text: chair.ofCase },
  ],
  manager: PRACTICE,
  administrator: PRACTICE,
};

export const guideWords = {
  ...said.guide,
  step: filled(said.guide.step, (step: number, steps: number) => ({ step, steps })),
};
