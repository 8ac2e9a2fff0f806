/** What was typed, made into values; refused in one line when it cannot be. */
@NullMarked
package polewright.operations.input;

import org.jspecify.annotations.NullMarked;
