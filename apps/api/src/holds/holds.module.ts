import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { HoldsController } from './holds.controller.js';
import { HoldsService } from './holds.service.js';

@Module({ imports: [SearchesModule], controllers: [HoldsController], providers: [HoldsService] })
export class HoldsModule {}
