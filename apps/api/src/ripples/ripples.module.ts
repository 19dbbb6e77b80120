import { Module } from '@nestjs/common';
import { RipplesController } from './ripples.controller.js';

@Module({ controllers: [RipplesController] })
export class RipplesModule {}
