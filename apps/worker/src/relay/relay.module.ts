import { Module } from '@nestjs/common';
import { RelayService } from './relay.service.js';

@Module({ providers: [RelayService] })
export class RelayModule {}
