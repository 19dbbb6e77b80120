import { Module } from '@nestjs/common';
import { LabOrdersController } from './lab-orders.controller.js';

@Module({ controllers: [LabOrdersController] })
export class LabOrdersModule {}
