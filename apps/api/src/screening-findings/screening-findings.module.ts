import { Module } from '@nestjs/common';
import { ScreeningFindingsController } from './screening-findings.controller.js';

@Module({ controllers: [ScreeningFindingsController] })
export class ScreeningFindingsModule {}
