import type { GateRequirement, PathGate, TreatmentPath } from '@archwright/protocol';
import { delivered } from '../words/delivered.js';
import { editorWords as words } from '../words/path-editor.js';
import { captureName } from './measured.js';
import { partName, visitChoices, workChoices, type Choice } from './path-parts.js';

export type RequirementKind = GateRequirement['kind'];

/** What a gate can ask for, of one kind: only what the path captures, lists or makes, in the order of the visits. */
export function requirementsOf({ visits, objects }: TreatmentPath, kind: RequirementKind): GateRequirement[] {
  switch (kind) {
    case 'capture':
      return visits.flatMap(({ code: at, captures }) => captures.map(({ code }) => ({ kind, code, at })));
    case 'checklist':
      return visits.flatMap(({ code: at, checklist }) => checklist.map(({ code }) => ({ kind, code, at })));
    case 'equal-counts':
      return visits.flatMap(({ code: at, checklist }) =>
        pairsOf(checklist.filter(({ counted }) => counted).map(({ code }) => code)).map((codes) => ({
          kind,
          codes,
          at,
        })),
      );
    case 'case-record':
      return (Object.keys(words.caseRecords) as (keyof typeof words.caseRecords)[]).map((record) => ({ kind, record }));
    case 'in-the-clinic':
      return objects.map(({ code }) => ({ kind, object: code }));
    case 'no-failed-check':
    case 'stage-passed':
    case 'disinfection':
      return visits.map(({ code }) => ({ kind, at: code }));
  }
}

function pairsOf(codes: readonly string[]): [string, string][] {
  return codes.flatMap((one, index) => codes.slice(index + 1).map((other): [string, string] => [one, other]));
}

/** Kinds of which the path has something to ask for. */
export const requirementKinds = (path: TreatmentPath): RequirementKind[] =>
  (Object.keys(words.requirementKinds) as RequirementKind[]).filter((kind) => requirementsOf(path, kind).length > 0);

/** Choices of one kind; what is asked for now is among them even where the path has it no more. */
export function requirementChoices(path: TreatmentPath, now: GateRequirement): Choice[] {
  const known = requirementsOf(path, now.kind);
  const isKnown = known.some((each) => requirementKey(each) === requirementKey(now));
  return (isKnown ? known : [now, ...known]).map((each) => ({
    value: requirementKey(each),
    label: requirementObject(path, each),
  }));
}

export const requirementKey = (requirement: GateRequirement): string => Object.values(requirement).flat().join('/');

/** What is asked for, without its kind. */
export function requirementObject(path: TreatmentPath, requirement: GateRequirement): string {
  switch (requirement.kind) {
    case 'capture':
      return words.coded(requirement.at, captureName(requirement.code));
    case 'checklist':
      return words.coded(requirement.at, lineText(path, requirement.at, requirement.code));
    case 'equal-counts': {
      const [one, other] = requirement.codes.map((code) => lineText(path, requirement.at, code));
      return words.coded(requirement.at, words.equal(one ?? '', other ?? ''));
    }
    case 'case-record':
      return words.caseRecords[requirement.record];
    case 'in-the-clinic':
      return partName(path, { kind: 'object', code: requirement.object });
    case 'no-failed-check':
    case 'stage-passed':
    case 'disinfection':
      return partName(path, { kind: 'visit', code: requirement.at });
  }
}

function lineText({ visits }: TreatmentPath, at: string, code: string): string {
  const line = visits.find((visit) => visit.code === at)?.checklist.find((each) => each.code === code);
  return line === undefined ? code : delivered(line.text);
}

/** What a gate can stand before: a visit or a step, or the prescription that is signed after a visit. */
export function guardedChoices(path: TreatmentPath): Choice[] {
  const visits = new Set(path.visits.map(({ code }) => code));
  const work = workChoices(path).map(({ value, label }) => ({
    value: guardedKey({ kind: visits.has(value) ? 'visit' : 'lab-step', code: value }),
    label,
  }));
  const prescriptions = visitChoices(path).map(({ value, label }) => ({
    value: guardedKey({ kind: 'prescription', code: value }),
    label: words.prescriptionAfter(label),
  }));
  return [...work, ...prescriptions];
}

export const guardedKey = ({ kind, code }: PathGate['before']): string => `${kind}/${code}`;

export function guardedOf(key: string): PathGate['before'] {
  const [kind = '', code = ''] = key.split('/');
  return { kind: kind as PathGate['before']['kind'], code };
}

/** What a gate stands before, in words. */
export const guardedName = (path: TreatmentPath, before: PathGate['before']): string =>
  guardedChoices(path).find(({ value }) => value === guardedKey(before))?.label ?? before.code;
