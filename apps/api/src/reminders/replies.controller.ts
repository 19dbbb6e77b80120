import { Controller, Get, HttpCode, Inject, Param, Post, Query, Res } from '@nestjs/common';
import { giveReply, viewReply, type ReplyPurpose, type ReplyView } from '@archwright/casework';
import { LinkError } from '@archwright/notices';
import { CONFIGURATION, Clock, type Configuration } from '@archwright/platform';
import type { FastifyReply } from 'fastify';
import { DataSource } from 'typeorm';
import { z } from 'zod';
import { Public } from '../security/access.js';
import { REPLY_PAGE_POLICY, repliedPage, replyPage } from './reply-page.js';

const purposeParam = z.enum(['confirm', 'ask-to-move', 'instructions']);
/** In the query, since a router limits the length of a part of the path. */
const tokenQuery = z.object({ token: z.string().max(1000) });

/** What patients do with the links in their messages. The token is their authority: there is no session. */
@Public()
@Controller('replies')
export class RepliesController {
  constructor(
    private readonly db: DataSource,
    private readonly clock: Clock,
    @Inject(CONFIGURATION) private readonly configuration: Configuration,
  ) {}

  @Get(':purpose')
  async show(
    @Param('purpose', { schema: purposeParam }) purpose: ReplyPurpose,
    @Query({ schema: tokenQuery }) { token }: z.output<typeof tokenQuery>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    const link = { secret: this.configuration.sessionSecret, purpose, token };
    return asPage(reply, replyPage(await unlessDead(viewReply, this.db, link, this.clock.now()), purpose));
  }

  @Post(':purpose')
  @HttpCode(200)
  async give(
    @Param('purpose', { schema: purposeParam }) purpose: ReplyPurpose,
    @Query({ schema: tokenQuery }) { token }: z.output<typeof tokenQuery>,
    @Res({ passthrough: true }) reply: FastifyReply,
  ): Promise<string> {
    const link = { secret: this.configuration.sessionSecret, purpose, token };
    return asPage(reply, repliedPage(await unlessDead(giveReply, this.db, link, this.clock.now()), purpose));
  }
}

/** A dead link is an ordinary sight for a patient: a page says what to do, not a problem document. */
async function unlessDead(use: typeof viewReply, ...given: Parameters<typeof viewReply>): Promise<ReplyView | null> {
  try {
    return await use(...given);
  } catch (error) {
    if (error instanceof LinkError) return null;
    throw error;
  }
}

function asPage(reply: FastifyReply, html: string): string {
  void reply
    .type('text/html; charset=utf-8')
    .header('content-security-policy', REPLY_PAGE_POLICY)
    .header('cache-control', 'no-store')
    .header('referrer-policy', 'no-referrer');
  return html;
}
