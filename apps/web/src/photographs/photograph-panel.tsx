import { LateDetails } from '../look/late-details.js';
import { latePart } from '../look/late-part.js';
import { photographWords as words } from '../words/photographs.js';
import type { Props } from './visit-photographs.js';

const VisitPhotographs = latePart(words.title, async () => {
  const { VisitPhotographs: Part } = await import('./visit-photographs.js');
  return Part;
});

/** Photographs of the visit, fetched once somebody wants to see them. */
export function PhotographPanel(props: Props) {
  return (
    <LateDetails id="photographs" title={words.title} startsOpen={false}>
      <VisitPhotographs {...props} />
    </LateDetails>
  );
}
