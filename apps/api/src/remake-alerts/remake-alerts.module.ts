import { Module } from '@nestjs/common';
import { RemakeAlertsController } from './remake-alerts.controller.js';

@Module({ controllers: [RemakeAlertsController] })
export class RemakeAlertsModule {}
