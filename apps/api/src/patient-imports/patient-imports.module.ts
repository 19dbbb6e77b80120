import { Module } from '@nestjs/common';
import { PatientImportsController } from './patient-imports.controller.js';

@Module({ controllers: [PatientImportsController] })
export class PatientImportsModule {}
