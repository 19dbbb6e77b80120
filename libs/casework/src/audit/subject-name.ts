/** Whatever of a practice has a name that may be told; patients are not among it, since an entry outlives their erasure. */
const NAMED = [
  'SELECT name FROM user_account WHERE id = e.subject_id',
  'SELECT name FROM clinic WHERE id = e.subject_id',
  'SELECT name FROM laboratory WHERE id = e.subject_id',
  'SELECT name FROM work_centre WHERE id = e.subject_id',
  'SELECT name FROM courier WHERE id = e.subject_id',
  `SELECT label FROM resource WHERE id = e.subject_id AND kind <> 'patient'`,
  `SELECT code || ', version ' || version FROM treatment_path_version WHERE id = e.subject_id`,
];

/** SQL for the name of the subject of an entry `e`; null for what has none. */
export const SUBJECT_NAME = `(${NAMED.join('\nUNION ALL ')} LIMIT 1)`;
