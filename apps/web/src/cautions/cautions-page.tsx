import { Link, useParams } from '@tanstack/react-router';
import { may } from '../frame/places-view.js';
import { useSession } from '../frame/use-session.js';
import { Notice, Refusal } from '../look/notice.js';
import { FirstWait, ScreenHead } from '../look/screen.js';
import { cautionWords as words } from '../words/cautions.js';
import { CautionForm } from './caution-form.js';
import { CautionLists } from './caution-list.js';
import { cautionRows } from './cautions-view.js';
import { useCautions } from './use-cautions.js';

/** What to mind with the patient of a case: for clinicians alone. */
export function CautionsPage() {
  const { caseId } = useParams({ from: '/inside/chair/cases/$caseId/cautions' });
  const { role } = useSession();
  const isClinician = may.treat(role);
  const { practice, view, list, record, end } = useCautions(caseId, isClinician);
  if (!isClinician) return <Notice tone="caution">{words.notForYou}</Notice>;
  if (!view.data || !list.data) {
    const error = view.error ?? list.error;
    const again = (): void => {
      void view.refetch();
      void list.refetch();
    };
    return error ? <Refusal error={error} onRetry={again} /> : <FirstWait what={words.loading} />;
  }
  const rows = cautionRows(list.data.items, view.data.zone, practice.today);
  return (
    <div className="roomy">
      <ScreenHead
        title={words.title(view.data.patient.name)}
        sentence={words.sentence(rows.filter(({ ended }) => ended === null).length)}
      >
        <Link to="/desk/cases/$caseId" params={{ caseId }} className="action">
          {words.back}
        </Link>
      </ScreenHead>
      <div className="beside">
        <CautionLists rows={rows} end={end} />
        <CautionForm
          pending={record.isPending}
          error={record.error}
          onRecord={(body, done) => {
            record.mutate(body, { onSuccess: done });
          }}
        />
      </div>
    </div>
  );
}
