import { Module } from '@nestjs/common';
import { ArrivalChecksController } from './arrival-checks.controller.js';

@Module({ controllers: [ArrivalChecksController] })
export class ArrivalChecksModule {}
