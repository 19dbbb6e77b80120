import { Module } from '@nestjs/common';
import { MeasurementRangesController } from './measurement-ranges.controller.js';

@Module({ controllers: [MeasurementRangesController] })
export class MeasurementRangesModule {}
