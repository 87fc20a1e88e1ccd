export { jsonLines, levelOf } from './log.ts';
export { createServer, type ServerParts } from './server.ts';
export { type Started, type StartParts, startServer } from './start.ts';
