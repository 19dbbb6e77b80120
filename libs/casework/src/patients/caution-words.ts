import { labMaterial, type LabMaterial } from '@archwright/contracts';
import { PatientCaution } from '@archwright/records';
import { In, IsNull, type EntityManager } from 'typeorm';

type Kind = PatientCaution['kind'];

/** What to do about it stands with the caution of the same hazard at each visit; this says that it is this patient. */
const WORDS: Readonly<Record<Exclude<Kind, 'material-allergy'>, string>> = {
  swallowing: 'This patient has trouble swallowing, or gags: higher risk of inhaling material or parts',
  bleeding: 'This patient bleeds longer, or takes medicines that make it so: ask before any surgery',
  'jaw-bone': 'This patient takes medicines or had radiation that endanger the jaw bone: ask before any surgery',
  other: 'To mind with this patient',
};

/** A caution as it is shown at the visit. */
export function cautionText({ kind, material, note }: Pick<PatientCaution, 'kind' | 'material' | 'note'>): string {
  const hazard =
    kind === 'material-allergy'
      ? `This patient is allergic to ${material === 'another' ? 'another material' : (material ?? '')}: do not use it`
      : WORDS[kind];
  return note === null ? `${hazard}.` : `${hazard}. ${note}`;
}

/** Cautions in force, as a visit shows them before everything else. */
export async function cautionsAtVisit(tx: EntityManager, patientId: string): Promise<{ code: string; text: string }[]> {
  const rows = await tx.find(PatientCaution, { where: { patientId, endedAt: IsNull() }, order: { recordedAt: 'ASC' } });
  return rows.map((row) => ({ code: `patient-${row.kind}`, text: cautionText(row) }));
}

/** Materials that a laboratory must not use for a patient; it learns nothing else of the patient's health. */
export async function materialsToAvoid(tx: EntityManager, patientId: string): Promise<LabMaterial[]> {
  return (await materialsOf(tx, [patientId])).get(patientId) ?? [];
}

/** Like {@link materialsToAvoid} for many patients at once. */
export async function materialsOf(
  tx: EntityManager,
  patientIds: readonly string[],
): Promise<Map<string, LabMaterial[]>> {
  const at = { patientId: In([...new Set(patientIds)]), kind: 'material-allergy' as const, endedAt: IsNull() };
  const materials = new Map<string, Set<LabMaterial>>();
  for (const { patientId, material } of await tx.findBy(PatientCaution, at)) {
    const read = labMaterial.safeParse(material).data;
    if (read !== undefined) materials.set(patientId, (materials.get(patientId) ?? new Set()).add(read));
  }
  return new Map([...materials].map(([patientId, some]) => [patientId, [...some].sort()]));
}
