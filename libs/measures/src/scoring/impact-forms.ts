/** A form of the questionnaire. Codes and ranges only: its wording may be under copyright and is loaded by the practice. */
export interface ImpactForm {
  readonly code: string;
  readonly version: string;
  readonly items: number;
  readonly scale: { readonly min: number; readonly max: number };
  /** Domains in item order. Empty when the form is scored as a whole. */
  readonly domains: readonly { readonly code: string; readonly firstItem: number; readonly lastItem: number }[];
  readonly source: string;
}

const domain = (code: string, firstItem: number, lastItem: number) => ({ code, firstItem, lastItem });

const DOMAINS = [
  domain('functional-limitation', 1, 3),
  domain('physical-pain', 4, 7),
  domain('psychological-discomfort', 8, 9),
  domain('physical-disability', 10, 12),
  domain('psychological-disability', 13, 14),
  domain('social-disability', 15, 17),
  domain('handicap', 18, 19),
];

/** Forms that are scored here; high is worse in all of them. */
export const IMPACT_FORMS = [
  {
    code: 'ohip-edent-19',
    version: '2002',
    items: 19,
    scale: { min: 0, max: 4 },
    domains: DOMAINS,
    source: 'Allen & Locker 2002 (from memory)',
  },
  {
    code: 'ohip-edent-19-three-point',
    version: '2002',
    items: 19,
    scale: { min: 0, max: 2 },
    domains: DOMAINS,
    source: 'three-level answers, 0 to 38 (from memory)',
  },
  {
    code: 'ohip-edent-20',
    version: '1-6',
    items: 20,
    scale: { min: 1, max: 6 },
    domains: [],
    source: '20 items, 20 to 120 (PMC4459116)',
  },
] as const satisfies readonly ImpactForm[];
export type ImpactFormCode = (typeof IMPACT_FORMS)[number]['code'];

/** Numbers of the questions, of the longest form. */
export const IMPACT_ITEMS: readonly string[] = Array.from(
  { length: Math.max(...IMPACT_FORMS.map(({ items }) => items)) },
  (_, index) => `question-${String(index + 1)}`,
);
