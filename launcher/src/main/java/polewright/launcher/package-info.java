/**
 * The entry point of the program: every command and the server of the pages, with the real clock, environment and
 * streams.
 *
 * <p>The test sources of this module hold the tests that need the whole program, and the rules of the architecture.
 */
@NullMarked
package polewright.launcher;

import org.jspecify.annotations.NullMarked;
