import { isKept } from '../drafts/kept-drafts.js';
import { LateDetails } from '../look/late-details.js';
import { latePart } from '../look/late-part.js';
import { teethWords as words } from '../words/teeth.js';
import { teethKey } from './teeth-key.js';
import type { Props } from './tooth-choice.js';

const ToothChoice = latePart(words.title, async () => {
  const { ToothChoice: Part } = await import('./tooth-choice.js');
  return Part;
});

/** The choice of teeth, fetched once somebody wants to see it. */
export function TeethPanel(props: Props) {
  return (
    <LateDetails id="teeth" title={words.title} startsOpen={isKept(teethKey(props.view.id))}>
      <ToothChoice {...props} />
    </LateDetails>
  );
}
