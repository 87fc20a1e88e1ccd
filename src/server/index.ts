export { createServer, type ServerParts } from './server.ts';
export { type StartParts, startServer } from './start.ts';
