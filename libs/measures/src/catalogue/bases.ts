import type { BooleanMeasurement, EnumMeasurement, Measurement, MilestoneKind } from '../measurement.js';
import { commonPractice, fromMemory, type Source } from '../standing.js';

const BORDER_REGIONS = [
  'upper-labial',
  'upper-buccal-right',
  'upper-buccal-left',
  'post-dam',
  'lower-labial',
  'lower-buccal-right',
  'lower-buccal-left',
  'lower-lingual-right',
  'lower-lingual-left',
] as const;

type Row = Pick<EnumMeasurement, 'code' | 'name' | 'capturedAt' | 'caution' | 'perArch' | 'regions'> & {
  readonly abbreviation?: string;
};

const finding = (
  row: Row,
  usual: readonly string[] | null,
  options: Readonly<Record<string, string>>,
  source: Source = commonPractice(),
): EnumMeasurement => ({
  ...row,
  group: 'bases',
  kind: 'enum',
  options: Object.entries(options).map(([code, label]) => ({ code, label })),
  usualOptions: usual,
  method: [],
  source,
});

const answer = (row: Row, usualAnswer: boolean | null): BooleanMeasurement => ({
  ...row,
  group: 'bases',
  kind: 'boolean',
  usualAnswer,
  method: [],
  source: commonPractice(),
});

const JAW: readonly MilestoneKind[] = ['jaw-relation'];
const IMPRESSION: readonly MilestoneKind[] = ['final-impression'];

/** Tray, impression, border and base plate findings. */
export const BASE_MEASUREMENTS: readonly Measurement[] = [
  finding(
    {
      code: 'tray-fit',
      name: 'Fit of the tray or printed base',
      perArch: true,
      capturedAt: IMPRESSION,
      caution: 'Try the empty tray before any material: seated upright, head forward, suction at hand.',
    },
    ['stable'],
    {
      stable: 'seats and stays',
      rocks: 'rocks',
      'short-borders': 'borders too short to mold',
      'over-extended': 'over-extended, can be trimmed',
    },
  ),
  {
    code: 'tray-border-clearance',
    name: 'Tray border short of the sulcus',
    group: 'bases',
    kind: 'number',
    unit: 'mm',
    plausible: { min: 0, max: 8 },
    usual: { min: 1.5, max: 2.5 },
    perArch: true,
    method: [],
    capturedAt: IMPRESSION,
    source: fromMemory(
      'textbook: custom tray 2 mm short of the sulcus; the 0.5 mm on either side are a project default',
    ),
    caution: 'Check labial and buccal frena apart.',
  },
  finding(
    {
      code: 'impression-result',
      name: 'Final impression',
      perArch: true,
      capturedAt: IMPRESSION,
      caution: 'Disinfect by the maker’s contact time and state it before dispatch.',
    },
    ['passed'],
    {
      passed: 'passed',
      'void-on-stress-area': 'void on a stress-bearing area',
      tear: 'torn',
      'unmolded-border': 'border not molded',
      'small-void': 'small void away from stress areas',
    },
  ),
  {
    code: 'impression-tries',
    name: 'Impressions taken of this arch in this visit',
    group: 'bases',
    kind: 'count',
    unit: 'count',
    plausible: { min: 1, max: 10 },
    usual: { min: 1, max: 2 },
    perArch: true,
    method: [],
    capturedAt: IMPRESSION,
    source: commonPractice('common practice, no source found: two tries, then a new visit'),
    caution: 'Tissue pressed twice is no longer at rest.',
  },
  finding(
    {
      code: 'border-extension',
      name: 'Border extension',
      regions: BORDER_REGIONS,
      capturedAt: ['final-impression', 'trial', 'placement', 'review'],
      caution: 'Noted per region; relieve frena before shortening a border.',
    },
    ['good'],
    { good: 'reaches the sulcus', short: 'short', 'over-extended': 'over-extended' },
  ),
  {
    code: 'border-thickness',
    abbreviation: 'BORD',
    name: 'Border thickness',
    group: 'bases',
    kind: 'number',
    unit: 'mm',
    plausible: { min: 0.5, max: 8 },
    usual: { min: 2, max: 3 },
    usualByGroup: [{ region: 'post-dam', range: { min: 0.5, max: 1.5 } }],
    regions: BORDER_REGIONS,
    method: [],
    capturedAt: ['final-impression', 'placement'],
    source: fromMemory('textbook: 2 to 3 mm, post-dam depth 0.5 to 1.5 mm'),
    caution: 'Thickness is what the functional sulcus asks for; the numbers are a guide.',
  },
  {
    code: 'post-dam-width',
    name: 'Width of the posterior palatal seal',
    group: 'bases',
    kind: 'number',
    unit: 'mm',
    plausible: { min: 0.5, max: 12 },
    usual: { min: 2, max: 5 },
    method: [],
    capturedAt: IMPRESSION,
    source: fromMemory('textbook'),
    caution: 'Mark the vibrating line in the mouth, not on the cast.',
  },
  {
    code: 'base-thickness',
    abbreviation: 'BASE',
    name: 'Base plate thickness',
    group: 'bases',
    kind: 'number',
    unit: 'mm',
    plausible: { min: 0.8, max: 6 },
    usual: { min: 1.5, max: 2.5 },
    regions: ['palate', 'upper-ridge', 'lower-ridge'],
    method: [],
    capturedAt: ['final-impression', 'jaw-relation', 'placement'],
    source: commonPractice(),
    caution: 'Below 1.5 mm a base may break.',
  },
  finding(
    {
      code: 'base-stability',
      name: 'Stability of the record base under finger pressure',
      perArch: true,
      capturedAt: ['jaw-relation', 'trial'],
      caution: 'Before any contact in speech or any tracing is believed: a loose base clicks as well.',
    },
    ['stable'],
    { stable: 'stable', rocks: 'rocks', lifts: 'lifts or drops', 'rim-loose': 'rim loose on a stable base' },
  ),
  finding(
    {
      code: 'frenum-relief',
      name: 'Frenum relief of the base plate',
      perArch: true,
      capturedAt: JAW,
      caution: 'Pull lip, cheek and tongue through their movements.',
    },
    ['free'],
    { free: 'frena free', 'relief-needed': 'relief needed' },
  ),
  answer(
    {
      code: 'parallel-closure',
      name: 'Base plates close parallel',
      capturedAt: JAW,
      caution: 'A premature contact tips the bases and moves the tracing.',
    },
    true,
  ),
  answer(
    {
      code: 'base-rocking',
      abbreviation: 'ROCKING',
      name: 'Base plate rocks on closing',
      perArch: true,
      capturedAt: JAW,
      caution: 'A rocking base cannot carry a tracing.',
    },
    false,
  ),
  answer(
    {
      code: 'pain-on-closing',
      name: 'Pain on closing',
      capturedAt: ['jaw-relation', 'trial', 'placement'],
      caution: 'Stop. Find the pressure point or the joint before going on.',
    },
    false,
  ),
  answer(
    {
      code: 'rim-or-base-contact',
      name: 'Rims or bases touch each other in movement',
      capturedAt: JAW,
      caution: 'Heels first: relieve, then trace again.',
    },
    false,
  ),
  finding(
    {
      code: 're-seat-check',
      name: 'Re-seating of the base after the impression set',
      perArch: true,
      capturedAt: JAW,
      caution: 'Impression set and passed before the tracing starts.',
    },
    ['seats-fully'],
    { 'seats-fully': 'seats fully', 'does-not-seat': 'does not seat fully' },
  ),
  answer(
    {
      code: 'tracing-risk-explained',
      name: 'Injury risk of the tracing set explained',
      capturedAt: JAW,
      caution:
        'Needle raised only after seating; small movements first; tongue, lip and cheek clear; no closing while talking; count parts in and out.',
    },
    true,
  ),
  finding(
    {
      code: 'centric-relation-agreement',
      name: 'New centric relation record against the mounting',
      capturedAt: ['trial', 'placement'],
      caution: 'Check with a new record, without guiding teeth into place.',
    },
    ['agrees'],
    { agrees: 'agrees', 'small-difference': 'small difference, can be ground in', differs: 'differs' },
  ),
];
