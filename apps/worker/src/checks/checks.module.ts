import { Module } from '@nestjs/common';
import { ChecksProcessor } from './checks.processor.js';
import { RechecksProcessor } from './rechecks.processor.js';

@Module({ providers: [ChecksProcessor, RechecksProcessor] })
export class ChecksModule {}
