import { Module } from '@nestjs/common';
import { TreatmentPathsController } from './treatment-paths.controller.js';

@Module({ controllers: [TreatmentPathsController] })
export class TreatmentPathsModule {}
