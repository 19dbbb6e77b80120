import { Controller, Get, Inject, NotFoundException } from '@nestjs/common';
import { caughtMail, type CaughtMail } from '@archwright/contracts';
import { CONFIGURATION, type Configuration } from '@archwright/platform';
import { z } from 'zod';
import { Roles } from '../security/access.js';

const CATCHER_WITHIN_MS = 5_000;
const answer = z.object({ items: z.array(caughtMail) });

/**
 * Mail that the demonstration caught instead of sending it, for those who may know patients. Outside the demonstration
 * there is no such page.
 */
@Roles('front-desk', 'clinician', 'manager')
@Controller('caught-mail')
export class CaughtMailController {
  constructor(@Inject(CONFIGURATION) private readonly configuration: Configuration) {}

  @Get()
  async list(): Promise<{ items: CaughtMail[] }> {
    const { mailCatcherUrl } = this.configuration;
    if (mailCatcherUrl === null) throw new NotFoundException();
    const response = await fetch(mailCatcherUrl, { signal: AbortSignal.timeout(CATCHER_WITHIN_MS) });
    return answer.parse(await response.json());
  }
}
