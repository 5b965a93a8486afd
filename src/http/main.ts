#!/usr/bin/env node
// `npm start`: the service on PORT and HOST.
import { addressFrom, serve } from './serve.ts';

try {
  await serve(addressFrom(process.env), (line) => {
    console.log(line);
  });
} catch (error) {
  console.error(error instanceof Error ? error.message : 'The service could not start.');
  process.exitCode = 1;
}
