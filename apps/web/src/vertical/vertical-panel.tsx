import { isKept } from '../drafts/kept-drafts.js';
import { LateDetails } from '../look/late-details.js';
import { latePart } from '../look/late-part.js';
import { verticalWords as words } from '../words/vertical.js';
import { screwKey } from './screw-key.js';
import type { Props } from './vertical-work-up.js';

const VerticalWorkUp = latePart(words.title, async () => {
  const { VerticalWorkUp: Part } = await import('./vertical-work-up.js');
  return Part;
});

/** The work-up of the vertical dimension, worked out once somebody wants to see it. */
export function VerticalPanel(props: Props) {
  const { id, tracingKit } = props.view;
  return (
    <LateDetails
      id="vertical"
      title={words.title}
      startsOpen={tracingKit !== null && isKept(screwKey(id, tracingKit.label))}
    >
      <VerticalWorkUp {...props} />
    </LateDetails>
  );
}
