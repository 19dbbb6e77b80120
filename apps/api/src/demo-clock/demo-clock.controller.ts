import { Body, Controller, Get, NotFoundException, Put } from '@nestjs/common';
import { demoClock, type DemoClock } from '@archwright/contracts';
import { Clock, SharedClock } from '@archwright/platform';

/** The demonstration's clock, which moves forward for everyone. Any other installation has no such page. */
@Controller('demo/clock')
export class DemoClockController {
  constructor(private readonly clock: Clock) {}

  @Get()
  show(): DemoClock {
    return { now: this.movable().now().toISOString() };
  }

  @Put()
  move(@Body({ schema: demoClock }) { now }: DemoClock): DemoClock {
    this.movable().moveTo(new Date(now));
    return this.show();
  }

  private movable(): SharedClock {
    if (!(this.clock instanceof SharedClock)) throw new NotFoundException();
    return this.clock;
  }
}
