import { Module } from '@nestjs/common';
import { ChecksProcessor } from './checks.processor.js';

@Module({ providers: [ChecksProcessor] })
export class ChecksModule {}
