import 'reflect-metadata';

const WANTED_HEADER = Symbol('wanted header');

/** Marks the route of a parameter as one that can't do without a header, so that the API's description can say so. */
export function wantsHeader(name: 'If-Match' | 'Idempotency-Key'): ParameterDecorator {
  return (controller, method) => {
    if (method !== undefined) Reflect.defineMetadata(WANTED_HEADER, name, controller, method);
  };
}

/**
 * @param controller prototype of its class
 * @returns the header that the route can't do without, if any
 */
export function wantedHeader(controller: object, method: string): string | undefined {
  return Reflect.getMetadata(WANTED_HEADER, controller, method) as string | undefined;
}
