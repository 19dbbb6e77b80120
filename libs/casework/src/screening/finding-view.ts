import type { ScreeningFindingPage, ScreeningFindingQuery, ScreeningFindingView } from '@archwright/contracts';
import { decodeCursor, pageOf, requireVersion } from '@archwright/platform';
import { ScreeningFinding, recordAudit } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import type { Actor } from '../actor.js';
import { personOf } from '../capture/person.js';
import { CASE_IN_SCOPE, caseScope } from '../cases/case-access.js';
import { RecordNotFoundError, WrongStateError } from '../errors.js';

type Row = Omit<ScreeningFindingView, 'foundAt' | 'seenAt'> & { readonly foundAt: Date; readonly seenAt: Date | null };

/**
 * A value is seen by those who see its case, a clinic's series by its people, a laboratory's share by who answers for
 * the practice, and a person's own series by that person alone. A value that was taken again is over.
 */
const FINDINGS = `
  SELECT f.id, f.version, f.kind, f.compared_with AS "comparedWith", f.group_size AS "groupSize", f.code, f.sentence,
    f.evidence, c.id AS "caseId", c.number AS "caseNumber", f.stage_id AS "stageId",
    CASE WHEN c.id IS NOT NULL THEN coalesce(i.given_name || ' ' || i.family_name, '(erased)') END AS "patientName",
    l.name AS "clinicName", b.name AS "laboratoryName",
    w.name AS "workCentreName", d.name AS "deviceName", f.found_at AS "foundAt", f.seen_at AS "seenAt", u.name AS "seenBy"
  FROM screening_finding f LEFT JOIN capture k ON k.id = f.capture_id LEFT JOIN stage g ON g.id = f.stage_id
    LEFT JOIN treatment_case c ON c.id = g.case_id LEFT JOIN patient_identity i ON i.patient_id = c.patient_id
    LEFT JOIN clinic l ON l.id = f.clinic_id LEFT JOIN laboratory b ON b.id = f.laboratory_id
    LEFT JOIN work_centre w ON w.id = f.work_centre_id LEFT JOIN device d ON d.id = f.device_id
    LEFT JOIN user_account u ON u.id = f.seen_by
  WHERE k.superseded_at IS NULL AND NOT EXISTS (
      SELECT FROM stage_value v WHERE v.stage_id = f.stage_id AND v.recorded_at > k.recorded_at
        AND (f.effect = 'value/' || k.id || '/' || v.subject OR f.effect LIKE 'set/%' AND v.code = f.code))
    AND CASE f.kind
    WHEN 'value' THEN ${CASE_IN_SCOPE}
    WHEN 'share' THEN $4
    ELSE CASE WHEN f.for_user_id IS NULL THEN $1::uuid[] IS NULL OR f.clinic_id = ANY ($1::uuid[])
      ELSE f.for_user_id = $3 END END`;

const sight = (actor: Actor): readonly unknown[] => [
  ...caseScope(actor),
  actor.userId,
  actor.role === 'manager' || actor.role === 'administrator',
];

/** The latest found first. */
export async function listFindings(
  tx: EntityManager,
  actor: Actor,
  { seen, stageId, cursor, limit }: ScreeningFindingQuery,
): Promise<ScreeningFindingPage> {
  const rows: Row[] = await tx.query(
    `${FINDINGS} AND ($5::boolean IS NULL OR (f.seen_at IS NOT NULL) = $5) AND ($6::uuid IS NULL OR f.stage_id = $6)
       AND ($7::uuid IS NULL OR f.id < $7) ORDER BY f.id DESC LIMIT $8`,
    [
      ...sight(actor),
      seen === undefined ? null : seen === 'yes',
      stageId ?? null,
      cursor === undefined ? null : decodeCursor(cursor).id,
      limit + 1,
    ],
  );
  const { items, next } = pageOf(rows, limit, ({ id }) => ({ sortKey: '', id }));
  return { items: items.map(viewOf), next };
}

/**
 * Notes that a person has looked at a finding. Nothing waited for it and nothing follows from it.
 *
 * @throws {WrongStateError} when somebody has looked at it before
 */
export async function markSeen(
  tx: EntityManager,
  actor: Actor,
  findingId: string,
  version: number,
  now: Date,
): Promise<ScreeningFindingView> {
  const seenBy = personOf(actor, 'A finding is looked at by a person.');
  await viewFinding(tx, actor, findingId);
  const finding = await tx.findOneOrFail(ScreeningFinding, {
    where: { id: findingId },
    lock: { mode: 'pessimistic_write' },
  });
  requireVersion(version, finding.version);
  if (finding.seenAt !== null) throw new WrongStateError('This finding', 'seen', 'not seen');
  await tx.update(ScreeningFinding, { id: findingId }, { seenAt: now, seenBy, version: version + 1 });
  await recordAudit(tx, {
    actorId: seenBy,
    action: 'see-finding',
    subjectKind: 'screening-finding',
    subjectId: findingId,
    details: {},
    at: now,
  });
  return viewFinding(tx, actor, findingId);
}

async function viewFinding(tx: EntityManager, actor: Actor, findingId: string): Promise<ScreeningFindingView> {
  const [row]: Row[] = await tx.query(`${FINDINGS} AND f.id = $5`, [...sight(actor), findingId]);
  if (row === undefined) throw new RecordNotFoundError('finding', findingId);
  return viewOf(row);
}

const viewOf = (row: Row): ScreeningFindingView => ({
  ...row,
  foundAt: row.foundAt.toISOString(),
  seenAt: row.seenAt?.toISOString() ?? null,
});
