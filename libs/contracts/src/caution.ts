import { z } from 'zod';
import { id, instant, sentence, version } from './primitives.js';

/** Materials of denture work that patients react to. Common practice, no source. */
export const allergyMaterial = z.enum([
  'methacrylate',
  'nickel',
  'latex',
  'eugenol',
  'polyether',
  'flavour',
  'another',
]);

/** Materials that a laboratory handles; it is told of these allergies and of nothing else. */
export const labMaterial = allergyMaterial.extract(['methacrylate', 'nickel', 'latex', 'another']);
export type LabMaterial = z.output<typeof labMaterial>;

const note = sentence.nullable().default(null);

/** What to mind with a patient at every visit. */
export const recordCaution = z.discriminatedUnion('kind', [
  /** Of another material the note says which; the laboratory is told to ask. */
  z.strictObject({ kind: z.literal('material-allergy'), material: allergyMaterial, note }),
  z.strictObject({ kind: z.enum(['swallowing', 'bleeding', 'jaw-bone']), note }),
  z.strictObject({ kind: z.literal('other'), note: sentence }),
]);
export type RecordCaution = z.output<typeof recordCaution>;

export const endCaution = z.strictObject({ reason: sentence });
export type EndCaution = z.output<typeof endCaution>;

export const cautionView = z.object({
  id,
  version,
  patientId: id,
  kind: z.enum(['material-allergy', 'swallowing', 'bleeding', 'jaw-bone', 'other']),
  material: allergyMaterial.nullable(),
  note: z.string().nullable(),
  /** As it is shown at the visit. */
  text: z.string(),
  recordedAt: instant,
  recordedBy: z.string(),
  /** Null while it is in force. */
  endedAt: instant.nullable(),
  endReason: z.string().nullable(),
});
export type CautionView = z.output<typeof cautionView>;

/** In force first, then the latest. */
export const cautionList = z.object({ items: z.array(cautionView) });
export type CautionList = z.output<typeof cautionList>;
