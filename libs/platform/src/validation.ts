import { StandardSchemaValidationPipe } from '@nestjs/common';
import { DomainError } from '@archwright/kernel';

/** One field that was refused. */
export interface FieldProblem {
  /** Path such as `visits.0.startsAt`; empty for the whole body. */
  readonly path: string;
  readonly problem: string;
  readonly accepted?: string;
}

/** A request does not have the shape of its contract. */
export class RequestInvalidError extends DomainError {
  constructor(readonly errors: readonly FieldProblem[]) {
    const named = errors.map(({ path, problem }) => (path === '' ? problem : `${path}: ${problem}`));
    super('platform.request-invalid', `The request was refused. ${named.join('; ')}`);
  }
}

/** What a zod issue says beyond a plain Standard Schema issue; every field depends on the kind of issue. */
interface SchemaIssue {
  readonly message: string;
  readonly path?: readonly unknown[];
  readonly code?: string;
  readonly expected?: string;
  readonly format?: string;
  readonly values?: readonly unknown[];
  readonly keys?: readonly string[];
  readonly minimum?: number | bigint;
  readonly maximum?: number | bigint;
  readonly origin?: string;
  /** Of a value of several forms: what each form says against it, or the words that tell the forms apart. */
  readonly errors?: readonly (readonly SchemaIssue[])[];
  readonly options?: readonly unknown[];
}

/** Checks each parameter that has a contract; its refusal names every field. */
export function validationPipe(): StandardSchemaValidationPipe {
  return new StandardSchemaValidationPipe({
    exceptionFactory: (issues) => new RequestInvalidError(issues.map((issue) => fieldProblemOf(issue as SchemaIssue))),
  });
}

/** Turns one issue of a zod schema into a field problem with what would be accepted. */
export function fieldProblemOf(issue: SchemaIssue): FieldProblem {
  const path = (issue.path ?? []).map((part) => String(isKeyed(part) ? part.key : part)).join('.');
  const accepted = acceptedBy(issue);
  return { path, problem: issue.message, ...(accepted === undefined ? {} : { accepted }) };
}

function isKeyed(part: unknown): part is { key: PropertyKey } {
  return typeof part === 'object' && part !== null && 'key' in part;
}

function acceptedBy(issue: SchemaIssue): string | undefined {
  switch (issue.code) {
    case 'invalid_type':
      return issue.expected;
    case 'invalid_value':
      return issue.values?.map(String).join(', ');
    case 'invalid_format':
      return issue.format === 'regex' ? issue.message : issue.format;
    case 'unrecognized_keys':
      return `no field ${issue.keys?.join(', ') ?? ''}`.trim();
    case 'too_small':
      return `at least ${String(issue.minimum)}${unitOf(issue.origin)}`;
    case 'too_big':
      return `at most ${String(issue.maximum)}${unitOf(issue.origin)}`;
    case 'invalid_union':
      return issue.options?.map(String).join(', ') ?? acceptedForms(issue.errors ?? []);
    default:
      return undefined;
  }
}

/** What each form of a value would take, such as `all or int`. */
function acceptedForms(forms: SchemaIssue['errors'] & object): string | undefined {
  const accepted = forms.map(([first]) => {
    if (first === undefined) return undefined;
    const { path, accepted: value } = fieldProblemOf(first);
    return path === '' || value === undefined ? value : `${path}: ${value}`;
  });
  return [...new Set(accepted.filter((each) => each !== undefined))].join(' or ') || undefined;
}

function unitOf(origin: string | undefined): string {
  if (origin === 'string') return ' characters';
  return origin === 'array' ? ' items' : '';
}
