import { Controller, Get, Param } from '@nestjs/common';
import { remindersOfCase, type Actor } from '@archwright/casework';
import { id as recordId, type ReminderView } from '@archwright/contracts';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

@Controller('cases')
export class RemindersController {
  constructor(private readonly db: DataSource) {}

  @Roles('front-desk')
  @Get(':id/reminders')
  async list(
    @CurrentActor() actor: Actor,
    @Param('id', { schema: recordId }) id: string,
  ): Promise<{ items: ReminderView[] }> {
    return { items: await readInOrganisation(this.db, actor.organisationId, (tx) => remindersOfCase(tx, actor, id)) };
  }
}
