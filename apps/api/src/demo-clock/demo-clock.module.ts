import { Module } from '@nestjs/common';
import { DemoClockController } from './demo-clock.controller.js';

@Module({ controllers: [DemoClockController] })
export class DemoClockModule {}
