import type { SetupView } from '@archwright/contracts';
import type { TreatmentPath } from '@archwright/protocol';
import { spelled } from '../words/plural.js';
import type { Choice } from './path-parts.js';
import { meansOf } from './paths-view.js';

/** Skills, instruments and work centres to choose among: what the practice has, what its paths ask for, what this one does. */
export function meansToChoose(
  path: TreatmentPath,
  setup: SetupView | undefined,
): Record<'skills' | 'kits' | 'workCentres', Choice[]> {
  const have = setup === undefined ? null : meansOf(setup);
  const choices = (...codes: readonly (readonly string[] | undefined)[]): Choice[] =>
    [...new Set(codes.flatMap((each) => each ?? []))].map((code) => ({ value: code, label: spelled(code) }));
  const ofSteps = path.labPhases.flatMap(({ steps }) => steps.map(({ workCentre }) => workCentre));
  return {
    skills: choices(
      have?.skills,
      setup?.asked.skills,
      path.visits.flatMap(({ skills }) => skills),
    ),
    kits: choices(
      have?.kits,
      setup?.asked.kits,
      path.visits.flatMap(({ kits }) => kits),
    ),
    workCentres: choices(have?.workCentres, setup?.asked.workCentres, ofSteps),
  };
}
