import { Module } from '@nestjs/common';
import { SweepService } from './sweep.service.js';

@Module({ providers: [SweepService] })
export class SweepsModule {}
