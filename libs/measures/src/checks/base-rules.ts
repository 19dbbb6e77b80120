import { commonPractice } from '../standing.js';
import { cautions, fails, passes, type CheckRule, type Outcome } from './rule.js';
import type { Stage } from './stage.js';

type Judge = (stage: Stage, arch: 'upper' | 'lower') => Outcome | null;

const perArch =
  (judge: Judge): CheckRule['evaluate'] =>
  (stage) =>
    stage.facts.arches.flatMap((arch) => {
      const outcome = judge(stage, arch);
      return outcome === null ? [] : [{ ...outcome, arch }];
    });

const trayFit: CheckRule = {
  code: 'tray-fit',
  version: 1,
  name: 'Tray or printed base fits',
  milestones: ['final-impression'],
  source: commonPractice(),
  cautionText: 'Try the empty tray, patient upright, before any material is mixed.',
  evaluate: perArch((stage, arch) => {
    const answer = stage.answer('tray-fit', { arch });
    if (answer === null) return null;
    const common = { value: answer, limit: 'seats and stays, borders long enough', measurement: 'tray-fit' };
    if (answer === 'rocks' || answer === 'short-borders') {
      const what = answer === 'rocks' ? 'rocks' : 'has borders too short to mold';
      return fails({
        ...common,
        reason: `The ${arch} tray ${what}: a new tray from the laboratory is needed.`,
        action: 'return-to-stage',
        trigger: 'tray-does-not-fit',
      });
    }
    if (answer === 'over-extended')
      return cautions({
        ...common,
        reason: `The ${arch} tray is over-extended: trim it 2 mm short of the sulcus and try again.`,
      });
    return passes({ ...common, reason: `The ${arch} tray seats and stays.` });
  }),
};

const impression: CheckRule = {
  code: 'final-impression',
  version: 1,
  name: 'Final impression',
  milestones: ['final-impression'],
  source: commonPractice(),
  cautionText: 'Rinse, disinfect by the maker’s contact time, state it before dispatch.',
  evaluate: perArch((stage, arch) => {
    const answer = stage.answer('impression-result', { arch });
    if (answer === null) return null;
    const common = {
      value: answer,
      limit: 'no void on stress areas, no tear, borders molded',
      measurement: 'impression-result',
    };
    if (answer === 'passed') return passes({ ...common, reason: `The ${arch} impression passed.` });
    if (answer === 'small-void')
      return cautions({
        ...common,
        reason: `The ${arch} impression has a small void away from stress areas: fill it or repeat.`,
      });
    const tries = stage.summary('impression-tries', { arch })?.median ?? 1;
    const allowed = stage.limit('impression-tries').value;
    const said = `The ${arch} impression has a fault (${String(answer).replaceAll('-', ' ')})`;
    return tries >= allowed
      ? fails({
          ...common,
          reason: `${said} after ${String(tries)} tries: let the tissue rest and book a new visit.`,
          action: 'return-to-stage',
          trigger: 'impression-flawed',
        })
      : fails({
          ...common,
          reason: `${said}, try ${String(tries)} of ${String(allowed)}: repeat it in this visit.`,
          action: 'repeat',
        });
  }),
};

const baseStability: CheckRule = {
  code: 'base-stability',
  version: 1,
  name: 'Record base is stable',
  milestones: ['jaw-relation', 'trial'],
  source: commonPractice(),
  cautionText: 'Nothing measured on a moving base is believed.',
  evaluate: perArch((stage, arch) => {
    const answer = stage.answer('base-stability', { arch });
    const rocks = stage.answer('base-rocking', { arch }) === true;
    if (answer === null && !rocks) return null;
    const common = {
      value: rocks ? 'rocks' : answer,
      limit: 'stable under finger pressure',
      measurement: 'base-stability',
    };
    if (!rocks && answer === 'stable') return passes({ ...common, reason: `The ${arch} base is stable.` });
    if (!rocks && answer === 'rim-loose')
      return fails({
        ...common,
        reason: `The rim of the ${arch} base is loose: fix it in the chair and measure again.`,
        action: 'correct-in-chair',
        trigger: 'rim-unstable',
      });
    return fails({
      ...common,
      reason: `The ${arch} base ${answer === 'lifts' ? 'lifts or drops' : 'rocks'}: if it does not fit, go back to the impression; if it was bent or broken, to the laboratory.`,
      action: 'return-to-stage',
      trigger: 'base-does-not-fit',
    });
  }),
};

const baseFindings: CheckRule = {
  code: 'base-plate-findings',
  version: 1,
  name: 'Frenum relief, parallel closure and re-seating of the base plates',
  milestones: ['jaw-relation'],
  source: commonPractice(),
  cautionText: 'Correct the base plates before any tracing.',
  evaluate(stage) {
    const outcomes: Outcome[] = [];
    for (const arch of stage.facts.arches) {
      const relief = stage.answer('frenum-relief', { arch });
      if (relief !== null) {
        const common = { value: relief, limit: 'frena free', measurement: 'frenum-relief', arch };
        outcomes.push(
          relief === 'free'
            ? passes({ ...common, reason: `Frena of the ${arch} base are free.` })
            : cautions({ ...common, reason: `The ${arch} base presses on a frenum: relieve it before going on.` }),
        );
      }
      const seat = stage.answer('re-seat-check', { arch });
      if (seat !== null) {
        const common = { value: seat, limit: 'seats fully', measurement: 're-seat-check', arch };
        outcomes.push(
          seat === 'seats-fully'
            ? passes({ ...common, reason: `The ${arch} base seats fully after the impression.` })
            : fails({
                ...common,
                reason: `The ${arch} base does not seat fully after the impression: find what holds it off before measuring.`,
                action: 'correct-in-chair',
              }),
        );
      }
    }
    const parallel = stage.answer('parallel-closure');
    if (parallel !== null) {
      const common = { value: parallel, limit: 'close parallel', measurement: 'parallel-closure' };
      outcomes.push(
        parallel === true
          ? passes({ ...common, reason: 'The base plates close parallel.' })
          : cautions({
              ...common,
              reason: 'The base plates do not close parallel: a first contact will tip them. Relieve it.',
            }),
      );
    }
    return outcomes;
  },
};

const contactAndPain: CheckRule = {
  code: 'contact-and-pain',
  version: 1,
  name: 'Contact of rims or bases, pain on closing',
  milestones: ['jaw-relation', 'trial', 'placement'],
  source: commonPractice(),
  cautionText: 'Pain is never worked through.',
  evaluate(stage) {
    const judge = (code: 'rim-or-base-contact' | 'pain-on-closing', good: string, bad: string): Outcome[] => {
      const answer = stage.answer(code);
      if (answer === null) return [];
      const common = { value: answer, limit: good, measurement: code };
      return answer === true
        ? [fails({ ...common, reason: bad, action: 'correct-in-chair' })]
        : [passes({ ...common, reason: `Finding: ${good}.` })];
    };
    return [
      ...judge(
        'rim-or-base-contact',
        'no contact of rims or bases',
        'Rims or bases touch each other: relieve the heels, then record again.',
      ),
      ...judge(
        'pain-on-closing',
        'no pain on closing',
        'Pain on closing: stop, find the pressure point or the joint, and record again without pain.',
      ),
    ];
  },
};

const borders: CheckRule = {
  code: 'borders',
  version: 1,
  name: 'Border extension by region',
  milestones: ['final-impression', 'trial', 'placement', 'review'],
  source: commonPractice(),
  cautionText: 'Relieve frena before shortening a border.',
  evaluate(stage) {
    return stage.of('border-extension').map((reading): Outcome => {
      const region = reading.region ?? 'border';
      const common = {
        value: reading.value,
        limit: 'reaches the sulcus',
        measurement: 'border-extension',
        ...(reading.region === undefined ? {} : { region: reading.region }),
      };
      const place = region.replaceAll('-', ' ');
      if (reading.value === 'good') return passes({ ...common, reason: `Border at ${place} reaches the sulcus.` });
      if (reading.value === 'short')
        return cautions({ ...common, reason: `Border at ${place} is short: add by border molding.` });
      return cautions({
        ...common,
        reason: `Border at ${place} is over-extended: shorten it and look for the frenum.`,
      });
    });
  },
};

export const BASE_RULES: readonly CheckRule[] = [
  trayFit,
  impression,
  baseStability,
  baseFindings,
  contactAndPain,
  borders,
];
