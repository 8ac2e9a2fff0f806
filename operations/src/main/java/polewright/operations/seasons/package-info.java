/** Reads the nights of the log for the comparison over seasons. */
@NullMarked
package polewright.operations.seasons;

import org.jspecify.annotations.NullMarked;
