/** One class a command. */
@NullMarked
package polewright.cli;

import org.jspecify.annotations.NullMarked;
