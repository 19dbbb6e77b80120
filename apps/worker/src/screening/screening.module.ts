import { Module } from '@nestjs/common';
import { ScreeningProcessor } from './screening.processor.js';

@Module({ providers: [ScreeningProcessor] })
export class ScreeningModule {}
