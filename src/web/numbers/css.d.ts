/** A style sheet is imported for its effect alone; the bundler loads it with the chunk that asks for it. */
declare module '*.css' {}
