/**
 * The schemas of the rule library would otherwise ask the browser whether code can be made from text, which the content security
 * policy forbids and reports. Loaded before anything else; this is the schema library's own switch, read when it is loaded.
 */
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });
