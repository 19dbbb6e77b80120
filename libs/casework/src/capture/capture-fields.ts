import type { StageView } from '@archwright/contracts';
import {
  measurementByCode,
  measurementsCapturedAt,
  milestoneKindsOf,
  type CheckSettings,
  type Measurement,
  type Person,
} from '@archwright/measures';
import type { Stage } from '@archwright/records';
import { archOfRegion } from './captured.js';
import type { ChainStage } from './stage-record.js';

type Field = StageView['fields'][number];

/** Readings that one median is made of, for lengths between marks on the skin: from memory, textbook. */
const MEDIAN_OF = 3;

/**
 * What is asked for at a stage, in the path's order, then whatever else the catalogue captures at such a visit; computed
 * values are not typed in.
 */
export function captureFields(
  part: ChainStage,
  { arches }: Pick<Stage, 'arches'>,
  settings: CheckSettings,
  person: Person,
): Field[] {
  const asked = part.captures.flatMap((capture): Field[] => {
    const measurement = measurementByCode(capture.code);
    const treated = arches.filter((arch) => capture.arches.includes(arch));
    if (measurement.derived === true || treated.length === 0) return [];
    return [{ ...fieldOf(measurement, treated, settings, person), required: capture.required }];
  });
  const kinds = part.milestones.flatMap((milestone) => milestoneKindsOf(milestone));
  const offered = measurementsCapturedAt(kinds).filter(({ code }) => !part.captures.some((each) => each.code === code));
  return [...asked, ...offered.map((each) => ({ ...fieldOf(each, arches, settings, person), required: false }))];
}

function fieldOf(
  measurement: Measurement,
  arches: readonly ('upper' | 'lower')[],
  settings: CheckSettings,
  person: Person,
): Omit<Field, 'required'> {
  const { code, name, group, kind, caution, source } = measurement;
  const isNumber = measurement.kind === 'number' || measurement.kind === 'count';
  const usual = isNumber ? settings.usual(measurement, person) : null;
  const regions = measurement.regions ?? [];
  return {
    code,
    name,
    group,
    kind,
    unit: isNumber ? measurement.unit : null,
    plausible: isNumber ? { ...measurement.plausible } : null,
    usual: usual === null ? null : { ...usual.range },
    choices: measurement.kind === 'enum' ? measurement.options.map((option) => ({ ...option })) : [],
    readings: isRepeated(measurement) ? MEDIAN_OF : 1,
    arches: measurement.perArch === true ? [...arches] : [],
    sides: measurement.perSide === true ? ['right', 'left'] : [],
    regions: regions.filter((region) => {
      const arch = archOfRegion(region);
      return arch === null || arches.includes(arch);
    }),
    method: measurement.method.map((each) => ({ ...each, options: [...each.options] })),
    caution: caution === '' ? null : caution,
    source: (usual?.source ?? source).text,
  };
}

const isRepeated = ({ method }: Measurement): boolean => method.some(({ key }) => key === 'landmarks');
