import { Controller, Get, Query } from '@nestjs/common';
import { findAuditEntries, type Actor } from '@archwright/casework';
import { auditQuery, type AuditPage, type AuditQuery } from '@archwright/contracts';
import { readInOrganisation } from '@archwright/records';
import { DataSource } from 'typeorm';
import { CurrentActor, Roles } from '../security/access.js';

/** Who did what and when. Read only: nothing changes an entry. */
@Controller('audit-entries')
@Roles('manager')
export class AuditTrailController {
  constructor(private readonly db: DataSource) {}

  @Get()
  find(@CurrentActor() actor: Actor, @Query({ schema: auditQuery }) query: AuditQuery): Promise<AuditPage> {
    return readInOrganisation(this.db, actor.organisationId, (tx) => findAuditEntries(tx, actor, query));
  }
}
