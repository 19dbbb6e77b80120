import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { OffersController } from './offers.controller.js';

@Module({ imports: [SearchesModule], controllers: [OffersController] })
export class OffersModule {}
