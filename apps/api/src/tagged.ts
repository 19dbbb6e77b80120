import type { FastifyReply } from 'fastify';
import { etagOf } from '@archwright/platform';

/** Answers with a view under its version as the entity tag, which the next change names in `If-Match`. */
export function tagged<View extends { readonly version: number }>(reply: FastifyReply, view: View): View {
  void reply.header('etag', etagOf(view.version));
  return view;
}
