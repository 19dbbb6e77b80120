import { ScoringError } from '../errors.js';
import { IMPACT_FORMS, type ImpactForm, type ImpactFormCode } from './impact-forms.js';

/** Missing answers that a person's own domain mean may stand in for (common practice, no source found). */
const MAX_MISSING = 2;

export interface ImpactScore {
  readonly form: ImpactFormCode;
  readonly version: string;
  readonly total: number;
  readonly domains: readonly { readonly code: string; readonly score: number; readonly max: number }[];
  /** Numbers of items that were filled by the person's mean of the domain. */
  readonly filledItems: readonly number[];
}

export function impactForm(code: string): ImpactForm & { readonly code: ImpactFormCode } {
  const form = IMPACT_FORMS.find((one) => one.code === code);
  if (form === undefined) {
    throw new ScoringError(
      'unknown-form',
      `There is no form "${code}". Accepted: ${IMPACT_FORMS.map((one) => one.code).join(', ')}.`,
      { code },
    );
  }
  return form;
}

/**
 * Scores one person's answers.
 *
 * @param answers one per item in item order, null for a missing one; up to two missing are filled with the person's mean
 *   of the same domain (of the whole form when it has none)
 * @throws {ScoringError} for a wrong number of items, an answer off the scale, more than two missing, or a domain without
 *   any answer
 */
export function scoreImpact(formCode: string, answers: readonly (number | null)[]): ImpactScore {
  const form = impactForm(formCode);
  if (answers.length !== form.items) {
    throw new ScoringError(
      'item-count',
      `${form.code} has ${String(form.items)} items, ${String(answers.length)} were given.`,
      { items: form.items, given: answers.length },
    );
  }
  answers.forEach((answer, index) => {
    requireOnScale(form, answer, index + 1);
  });
  const missing = answers.flatMap((answer, index) => (answer === null ? [index + 1] : []));
  if (missing.length > MAX_MISSING) {
    throw new ScoringError(
      'too-many-missing',
      `${String(missing.length)} answers are missing (items ${missing.join(', ')}); up to ${String(MAX_MISSING)} are accepted. It is not scored.`,
      { missing },
    );
  }
  const parts = form.domains.length > 0 ? form.domains : [{ code: 'whole', firstItem: 1, lastItem: form.items }];
  const scored = parts.map((part) => scorePart(form, part, answers.slice(part.firstItem - 1, part.lastItem)));
  return {
    form: form.code,
    version: form.version,
    total: scored.reduce((sum, part) => sum + part.score, 0),
    domains: form.domains.length > 0 ? scored : [],
    filledItems: missing,
  };
}

function requireOnScale(form: ImpactForm, answer: number | null, item: number): void {
  if (answer === null) return;
  const { min, max } = form.scale;
  if (!Number.isInteger(answer) || answer < min || answer > max) {
    throw new ScoringError(
      'answer-off-scale',
      `Item ${String(item)}: ${String(answer)} is not on the scale of ${form.code}, ${String(min)} to ${String(max)}.`,
      { item, answer },
    );
  }
}

function scorePart(form: ImpactForm, part: ImpactForm['domains'][number], answers: readonly (number | null)[]) {
  const given = answers.filter((answer) => answer !== null);
  if (given.length === 0) {
    throw new ScoringError('domain-empty', `All items of ${part.code} are missing: it is not scored.`, {
      domain: part.code,
    });
  }
  const sum = given.reduce((total, answer) => total + answer, 0);
  const score = sum + (sum / given.length) * (answers.length - given.length);
  return { code: part.code, score, max: answers.length * form.scale.max };
}

/**
 * Refuses a domain value, own or quoted, that the form cannot give.
 *
 * @returns the value
 * @throws {ScoringError} `measures.impossible-domain-value`
 */
export function checkDomainValue(formCode: string, domainCode: string, value: number): number {
  const form = impactForm(formCode);
  const part = form.domains.find((one) => one.code === domainCode);
  if (part === undefined)
    throw new ScoringError('unknown-domain', `${form.code} has no domain "${domainCode}".`, { domain: domainCode });
  const items = part.lastItem - part.firstItem + 1;
  const [min, max] = [items * form.scale.min, items * form.scale.max];
  if (!(value >= min && value <= max)) {
    throw new ScoringError(
      'impossible-domain-value',
      `${domainCode} ${String(value)} is impossible in ${form.code}: ${String(items)} items give ${String(min)} to ${String(max)}. Is it another response scale?`,
      { domain: domainCode, value, min, max },
    );
  }
  return value;
}

/**
 * Later minus earlier total; negative is an improvement.
 *
 * @throws {ScoringError} `measures.different-instrument` when form or version differ
 */
export function changeOfImpact(earlier: ImpactScore, later: ImpactScore): number {
  if (earlier.form !== later.form || earlier.version !== later.version) {
    throw new ScoringError(
      'different-instrument',
      `${earlier.form} (${earlier.version}) and ${later.form} (${later.version}) are never compared: instrument, version and response scale must be the same.`,
      { earlier: earlier.form, later: later.form },
    );
  }
  return later.total - earlier.total;
}
