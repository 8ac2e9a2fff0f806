/**
 * Polewright's operations, shared by the terminal and the pages: appends events to the log, reads frames, folders and
 * typed values, and runs practice. Only this module, {@code cli}, {@code web} and {@code launcher} use clock, files
 * and sockets; everything it calls below, apart from {@code store}, is pure.
 *
 * <p>{@link polewright.operations.input} parses what was typed; {@code polewright.report} words the results.
 */
@NullMarked
package polewright.operations;

import org.jspecify.annotations.NullMarked;
