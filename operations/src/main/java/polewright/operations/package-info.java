/**
 * Polewright's operations, shared by the terminal and the pages: appends events to the log, reads frames, folders and
 * typed values, and runs practice. Clock, files and sockets are used here, in {@code cli}, {@code web} and
 * {@code launcher}; everything it calls below, apart from {@code store}, is pure.
 *
 * <p>{@link polewright.operations.input} parses what was typed; {@code polewright.report} words the results.
 */
@NullMarked
package polewright.operations;

import org.jspecify.annotations.NullMarked;
