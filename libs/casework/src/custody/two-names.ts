import type { HandedOver } from '@archwright/contracts';
import { RequestInvalidError, type FieldProblem } from '@archwright/platform';
import type { EntityManager } from 'typeorm';

interface NamedObject {
  readonly id: string;
  readonly code: string;
  readonly caseNumber: string;
}

/**
 * Objects by the number of their case and their own code, both read off the thing in hand: a label on the wrong thing is
 * found out before it travels.
 *
 * @param field where the list stands in the request
 * @throws {RequestInvalidError} naming each one that is unknown, belongs to another case, or is named twice
 */
export async function objectsByTwoNames(
  tx: EntityManager,
  named: readonly HandedOver[],
  field: string,
): Promise<NamedObject[]> {
  const known: NamedObject[] = await tx.query(
    `SELECT o.id, o.code, c.number AS "caseNumber" FROM custody_object o JOIN treatment_case c ON c.id = o.case_id
     WHERE o.code = ANY ($1::text[])`,
    [named.map(({ code }) => code)],
  );
  const problems = named.flatMap((each, index): FieldProblem[] => {
    const problem = problemOf(each, index, { named, known });
    return problem === null ? [] : [{ path: `${field}.${String(index)}`, ...problem }];
  });
  if (problems.length > 0) throw new RequestInvalidError(problems);
  return known;
}

function problemOf(
  { code, caseNumber }: HandedOver,
  index: number,
  { named, known }: { readonly named: readonly HandedOver[]; readonly known: readonly NamedObject[] },
): Omit<FieldProblem, 'path'> | null {
  const object = known.find((each) => each.code === code);
  if (object === undefined) return { problem: `no object has the code ${code}`, accepted: 'a code that is registered' };
  if (object.caseNumber !== caseNumber) {
    // Which case it does belong to is for the person with the thing in hand to find out.
    return { problem: `${code} does not belong to case ${caseNumber}`, accepted: 'both names off the same label' };
  }
  const first = named.findIndex((each) => each.code === code);
  return first === index ? null : { problem: `${code} is named twice`, accepted: 'each object once' };
}
