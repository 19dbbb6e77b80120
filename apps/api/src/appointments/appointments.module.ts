import { Module } from '@nestjs/common';
import { SearchesModule } from '@archwright/casework';
import { AppointmentsController } from './appointments.controller.js';

@Module({ imports: [SearchesModule], controllers: [AppointmentsController] })
export class AppointmentsModule {}
