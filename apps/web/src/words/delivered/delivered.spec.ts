import { CHECK_RULES, MEASUREMENTS, RULE_LIMITS } from '@archwright/measures';
import { shippedPaths, type GateRequirement } from '@archwright/protocol';
import { delivered as arabic } from './ar.js';
import { delivered as german } from './de.js';
import { readerOf, type Delivered } from './delivered.js';

const words = (code: string): string => code.replaceAll('-', ' ');
/** Names of forms, languages and counts are the same in every language. */
const isNumberOrName = (option: string): boolean => /^(\d+|[a-z]{2}|.*\d.*|kapur-.*|modified)$/.test(option);

/** Of what a gate misses, the texts that name no part of the path. */
function requirementText(requirement: GateRequirement): string[] {
  switch (requirement.kind) {
    case 'case-record':
      return [`${words(requirement.record)} dated`];
    case 'no-failed-check':
      return ['No failed check left open'];
    case 'disinfection':
      return ['Disinfection recorded: agent and time'];
    default:
      return [];
  }
}

const texts: Readonly<Record<string, readonly string[]>> = {
  paths: shippedPaths.map(({ title }) => title),
  visits: shippedPaths.flatMap(({ visits }) => visits.map(({ title }) => title)),
  steps: shippedPaths.flatMap(({ labPhases }) => labPhases.flatMap(({ steps }) => steps).map(({ title }) => title)),
  gates: shippedPaths.flatMap(({ gates }) => gates.map(({ title }) => title)),
  objects: shippedPaths.flatMap(({ objects }) => objects.map(({ title }) => title)),
  checklist: shippedPaths.flatMap(({ visits }) => visits.flatMap(({ checklist }) => checklist.map(({ text }) => text))),
  measurements: MEASUREMENTS.map(({ name }) => name),
  questions: MEASUREMENTS.flatMap(({ method }) => method.map(({ question }) => question)),
  choices: MEASUREMENTS.flatMap((each) => (each.kind === 'enum' ? each.options.map(({ label }) => label) : [])),
  rules: CHECK_RULES.map(({ name }) => name),
  advice: CHECK_RULES.map(({ cautionText }) => cautionText),
  limits: RULE_LIMITS.map(({ meaning }) => meaning),
  codes: [
    ...MEASUREMENTS.flatMap(({ method }) =>
      method.flatMap(({ options }) => options.filter((one) => !isNumberOrName(one))),
    ),
    ...MEASUREMENTS.flatMap(({ regions = [] }) => regions.filter((one) => !isNumberOrName(one))),
    ...[...MEASUREMENTS, ...RULE_LIMITS].map(({ source }) => source.standing),
  ].map(words),
  requirements: shippedPaths.flatMap(({ gates }) => gates.flatMap(({ requires }) => requires.flatMap(requirementText))),
  jaws: ['Upper and lower', 'Upper', 'Lower'],
};

describe.each<[string, Delivered]>([
  ['German', german],
  ['Arabic', arabic],
])('delivered texts in %s', (_, catalogue) => {
  const known = new Set(Object.values(catalogue).flatMap((group) => Object.keys(group)));

  it.each(Object.keys(texts))('has all %s', (group) => {
    expect(texts[group]?.length).toBeGreaterThan(0);
    expect(texts[group]?.filter((text) => !known.has(text))).toEqual([]);
  });

  it('has nothing that is delivered no more, and nothing twice', () => {
    const wanted = new Set(Object.values(texts).flat());
    expect([...known].filter((text) => !wanted.has(text))).toEqual([]);
    expect(Object.values(catalogue).flatMap((group) => Object.keys(group))).toHaveLength(known.size);
  });
});

describe('a delivered text', () => {
  const read = readerOf(german);

  it('is said in the language of the page', () => {
    expect(read('Trial placement')).toBe('Anprobe');
  });

  it('is said part by part where visits are held as one', () => {
    expect(read('Trial placement; Placement')).toBe('Anprobe; Eingliederung');
  });

  it('is said behind the jaw that it is of', () => {
    expect(read('Upper and lower: Laboratory reline')).toBe('Oben und unten: Unterfütterung im Labor');
    expect(read('Upper: Laboratory reline; Lower: Our own way')).toBe(
      'Oben: Unterfütterung im Labor; Unten: Our own way',
    );
  });

  it('stays as a practice wrote it', () => {
    expect(read('Our first look; with tea')).toBe('Our first look; with tea');
    expect(read('Note: nothing')).toBe('Note: nothing');
  });
});
