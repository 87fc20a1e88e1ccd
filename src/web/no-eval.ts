/**
 * The page may make no code from text (its content security policy), and zod would try once, which the browser reports. Zod looks
 * here for its settings when it is loaded; the bench page itself does without it. Imported before everything else.
 */
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });
