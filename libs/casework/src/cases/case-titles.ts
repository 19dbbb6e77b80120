import type { EntityManager } from 'typeorm';

interface ArchTitle {
  readonly caseId: string;
  readonly arch: 'upper' | 'lower';
  readonly pathTitle: string;
}

/** What is treated and how, by case, such as `Upper and lower: Digital with printed base plates`. */
export async function caseTitles(tx: EntityManager, caseIds: readonly string[]): Promise<Map<string, string>> {
  const arches: ArchTitle[] = await tx.query(
    `SELECT a.case_id AS "caseId", a.arch, v.document ->> 'title' AS "pathTitle"
     FROM case_arch a JOIN treatment_path_version v ON v.id = a.path_version_id
     WHERE a.case_id = ANY ($1::uuid[])`,
    [caseIds],
  );
  return new Map(caseIds.map((id) => [id, titleOf(arches.filter(({ caseId }) => caseId === id))]));
}

/** The title of one case from its arches. */
function titleOf(arches: readonly Pick<ArchTitle, 'arch' | 'pathTitle'>[]): string {
  const upper = arches.find(({ arch }) => arch === 'upper')?.pathTitle;
  const lower = arches.find(({ arch }) => arch === 'lower')?.pathTitle;
  if (upper !== undefined && upper === lower) return `Upper and lower: ${upper}`;
  const each = [
    ...(upper === undefined ? [] : [`Upper: ${upper}`]),
    ...(lower === undefined ? [] : [`Lower: ${lower}`]),
  ];
  return each.join('; ');
}

/** Titles of the paths that a case has pinned, by version. */
export async function pathTitles(tx: EntityManager, caseId: string): Promise<Map<string, string>> {
  const rows: { id: string; title: string }[] = await tx.query(
    `SELECT v.id, v.document ->> 'title' AS title FROM treatment_path_version v
     WHERE v.id IN (SELECT path_version_id FROM case_arch WHERE case_id = $1)`,
    [caseId],
  );
  return new Map(rows.map(({ id, title }) => [id, title]));
}
