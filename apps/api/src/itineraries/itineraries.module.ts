import { Module } from '@nestjs/common';
import { ItinerariesController } from './itineraries.controller.js';

@Module({ controllers: [ItinerariesController] })
export class ItinerariesModule {}
