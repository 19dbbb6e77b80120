import { Module } from '@nestjs/common';
import { AuditTrailController } from './audit-trail.controller.js';

@Module({ controllers: [AuditTrailController] })
export class AuditTrailModule {}
