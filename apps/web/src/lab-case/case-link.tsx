import { Link } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';

/** A case's number, leading to the case as this person may see it. */
export function CaseLink({ caseId, number }: { caseId: string; number: string }) {
  const { role } = useSession();
  const to = may.seeVisits(role) ? '/desk/cases/$caseId' : '/bench/cases/$caseId';
  return (
    <Link to={to} params={{ caseId }} className="strong">
      {number}
    </Link>
  );
}
