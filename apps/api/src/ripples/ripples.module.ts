import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { RipplesController } from './ripples.controller.js';

@Module({ imports: [SearchesModule], controllers: [RipplesController] })
export class RipplesModule {}
