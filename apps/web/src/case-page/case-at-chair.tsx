import { Link } from '@tanstack/react-router';
import { aftercareWords } from '../words/aftercare.js';
import { cautionWords } from '../words/cautions.js';
import { courseWords } from '../words/course.js';

/** The ways from a case to what is recorded of it beside its visits; its course and the cautions of the patient are for clinicians. */
export function CaseAtChair({ caseId, mayTreat }: { caseId: string; mayTreat: boolean }) {
  return (
    <>
      <Link to="/chair/cases/$caseId/aftercare" params={{ caseId }} className="action">
        {aftercareWords.link}
      </Link>
      {mayTreat ? (
        <>
          <Link to="/chair/cases/$caseId/cautions" params={{ caseId }} className="action">
            {cautionWords.link}
          </Link>
          <Link to="/chair/cases/$caseId/course" params={{ caseId }} className="action">
            {courseWords.link}
          </Link>
        </>
      ) : null}
    </>
  );
}
