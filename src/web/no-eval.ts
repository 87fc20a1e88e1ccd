/**
 * The page may make no code from text (its content security policy), and zod would try once, which the browser reports. Imported
 * before everything else: a schema asks when it is made.
 */
import { config } from 'zod/v4/core';

config({ jitless: true });
