import { Controller, Get, Module } from '@nestjs/common';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';

@Controller('bare')
class BareController {
  @Get()
  show(): { readonly is: string } {
    return { is: 'bare' };
  }
}

@Module({ controllers: [BareController] })
class BareModule {}

/** A handler of the same framework that does nothing: what the machine can give at best. Tells its port by its parent. */
export async function serveBare(): Promise<void> {
  const app = await NestFactory.create<NestFastifyApplication>(BareModule, new FastifyAdapter(), { logger: false });
  await app.listen(0, '127.0.0.1');
  process.send?.(await app.getUrl());
  process.once('disconnect', () => process.exit(0));
}
