import type { PathList, PathSummary, PathView } from '@archwright/contracts';
import { treatmentPath } from '@archwright/protocol';
import { TreatmentPathVersion } from '@archwright/records';
import type { EntityManager } from 'typeorm';
import { RecordNotFoundError } from '../errors.js';

type Row = Omit<PathSummary, 'publishedAt'> & { readonly publishedAt: Date };

const SUMMARY = `
  SELECT v.id, v.code, v.version, v.document->>'title' AS title, v.document->'arches' AS arches,
    jsonb_array_length(v.document->'visits') AS visits, v.published_at AS "publishedAt", u.name AS "publishedBy",
    EXISTS (SELECT FROM treatment_path_withdrawal w WHERE w.path_version_id = v.id) AS "isWithdrawn",
    v.version = max(v.version) OVER (PARTITION BY v.code) AS "isLatest",
    (SELECT count(DISTINCT c.id) FROM case_arch a JOIN treatment_case c ON c.id = a.case_id
      WHERE a.path_version_id = v.id AND c.state IN ('enquiry', 'open', 'paused'))::integer AS "openCases"
  FROM treatment_path_version v LEFT JOIN user_account u ON u.id = v.published_by`;

/** Every published version, withdrawn ones as well: open cases may follow them still. */
export async function listPaths(tx: EntityManager): Promise<PathList> {
  const rows: Row[] = await tx.query(`${SUMMARY} ORDER BY v.code, v.version DESC`);
  return { items: rows.map(toSummary) };
}

/** @throws {RecordNotFoundError} for a version that is not published here */
export async function viewPath(tx: EntityManager, id: string): Promise<PathView> {
  const version = await tx.findOneBy(TreatmentPathVersion, { id });
  // Among all versions, since whether it is the latest is a question of the others.
  const summary = (await listPaths(tx)).items.find((each) => each.id === id);
  if (version === null || summary === undefined) throw new RecordNotFoundError('treatment path version', id);
  return { ...summary, document: treatmentPath.parse(version.document) };
}

const toSummary = ({ publishedAt, ...row }: Row): PathSummary => ({ ...row, publishedAt: publishedAt.toISOString() });
