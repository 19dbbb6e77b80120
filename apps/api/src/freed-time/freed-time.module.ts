import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { FreedTimeController } from './freed-time.controller.js';

@Module({ imports: [SearchesModule], controllers: [FreedTimeController] })
export class FreedTimeModule {}
