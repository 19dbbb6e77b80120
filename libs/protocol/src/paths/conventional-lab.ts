import type { PathLabStep } from '../path-schema.js';
import { after, handsOn, machine, setting, step, typical } from './notation.js';

/** From an approved set-up to the finished denture in a flask: festoon to check. */
export function processingSteps(fromVisit: string): PathLabStep[] {
  return [
    step('festoon', 'Festoon', 'wax', [handsOn(45)], [after(fromVisit)]),
    step('flask', 'Flask', 'processing', [handsOn(40), setting(60)], [after('festoon')], {
      pointOfNoReturn: 'flasking',
    }),
    step('pack', 'Dewax and pack', 'processing', [handsOn(45)], [after('flask')]),
    // 9 h at 73 °C is the long cycle of a residual monomer study; 30 min bench and 15 min water cooling are common practice.
    step('cure', 'Curing cycle, long', 'curing', [machine(540)], [after('pack')], {
      batch: 'curing-cycle',
      singleArchFactor: 1,
    }),
    step('deflask', 'Cool and deflask', 'processing', [setting(45), handsOn(30)], [after('cure')]),
    step('lab-remount', 'Laboratory remount', 'articulator', [handsOn(30)], [after('deflask')]),
    step('finish', 'Finish and polish', 'finishing', [handsOn(90)], [after('lab-remount')]),
    step('check', 'Soak, then check and statement', 'checking', [setting(1440), handsOn(15)], [after('finish')]),
  ];
}

/** From an accepted jaw relation record to a trial set-up in wax. */
export function setUpSteps(fromVisit: string): PathLabStep[] {
  return [
    step(
      'mount',
      'Articulator mounting',
      'articulator',
      [handsOn(30), setting(30)],
      [{ code: fromVisit, lag: 'record-to-mounting', min: null, max: typical(2880, 'minutes') }],
    ),
    step('set-up', 'Tooth set-up', 'tooth-set-up', [handsOn(150)], [after('mount')]),
    step('contour', 'Wax contour', 'wax', [handsOn(45)], [after('set-up')]),
  ];
}

/** Custom trays on casts of the preliminary impressions. */
export function traySteps(fromVisit: string): PathLabStep[] {
  return [
    step(
      'pour-preliminary',
      'Pour and trim the preliminary casts',
      'cast-room',
      [handsOn(30), setting(60)],
      [
        {
          code: fromVisit,
          lag: 'preliminary-impression-to-pour',
          min: typical(30, 'minutes', 'addition silicone: wait 30–60 min'),
          max: typical(10_080, 'minutes', 'addition silicone: up to 7–14 d'),
        },
      ],
    ),
    step('trays', 'Custom trays', 'cast-room', [handsOn(50)], [after('pour-preliminary')]),
  ];
}

/** Definitive casts, record bases and occlusion rims. */
export function rimSteps(fromVisit: string): PathLabStep[] {
  return [
    step(
      'pour-definitive',
      'Bead, box and pour the definitive casts',
      'cast-room',
      [handsOn(40), setting(60)],
      [
        {
          code: fromVisit,
          lag: 'final-impression-to-pour',
          min: typical(30, 'minutes', 'addition silicone: wait 30–60 min'),
          max: typical(10_080, 'minutes', 'addition silicone: up to 7–14 d'),
        },
      ],
    ),
    step('record-bases', 'Record bases', 'cast-room', [handsOn(40)], [after('pour-definitive')]),
    step('rims', 'Occlusion rims', 'wax', [handsOn(30), setting(30)], [after('record-bases')]),
  ];
}
