import type { CalendarParty } from '@archwright/interop';
import { signLink, type LinkPurpose, type Mailer, type ReplyWays } from '@archwright/notices';
import type { Visit } from './visits.js';

/** Where mail leaves, in whose name, and where its links lead. */
export interface Post {
  readonly mailer: Mailer;
  readonly from: CalendarParty;
  readonly publicUrl: string;
  /** Signs the links; 32 bytes or more. */
  readonly linkSecret: string;
}

/** A link outlives its visit a little, for a patient who looks for the details on the way. */
const LINK_OUTLIVES_MS = 24 * 3_600_000;

/** Links in a message about one visit. */
export function replyWays(post: Post, visit: Visit): ReplyWays {
  const link = (purpose: LinkPurpose) =>
    linkTo(post, purpose, { organisationId: visit.organisationId, subjectId: visit.id }, visit.endsAt);
  return {
    confirmUrl: link('confirm'),
    askToMoveUrl: link('ask-to-move'),
    detailsUrl: link('instructions'),
    phone: visit.clinicPhone,
  };
}

function linkTo(
  { publicUrl, linkSecret }: Post,
  purpose: LinkPurpose,
  subject: { organisationId: string; subjectId: string },
  endsAt: Date,
): string {
  const token = signLink(linkSecret, purpose, subject, endsAt.getTime() + LINK_OUTLIVES_MS);
  return `${publicUrl}/api/v1/replies/${purpose}?token=${token}`;
}
