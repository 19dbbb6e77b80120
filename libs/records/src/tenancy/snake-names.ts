import { DefaultNamingStrategy } from 'typeorm';

/** `startsAt` in code is `starts_at` in the database. */
export class SnakeNames extends DefaultNamingStrategy {
  override columnName(propertyName: string, customName: string | undefined): string {
    return customName ?? propertyName.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);
  }
}
